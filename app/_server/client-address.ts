import { headers } from "next/headers";

/**
 * Network address of the asker, or null when it cannot be trusted. Anyone may send a forwarding header, so it counts
 * only when SETPOINT_LEDGER_TRUSTED_PROXY says that a proxy stands before this server; its own entry is the last one.
 */
export async function clientAddress(): Promise<string | null> {
  if (!isBehindTrustedProxy()) return null;
  const forwarded = (await headers()).get("x-forwarded-for") ?? "";
  return forwarded.split(",").at(-1)?.trim() || null;
}

/** Whether the browser speaks https with the trusted proxy, so that cookies may be marked secure. */
export async function isHttps(): Promise<boolean> {
  return isBehindTrustedProxy() && (await headers()).get("x-forwarded-proto") === "https";
}

const isBehindTrustedProxy = (): boolean => process.env.SETPOINT_LEDGER_TRUSTED_PROXY === "1";
