import path from "node:path";

/** Folder of the databases, uploads and the sign-in secret: SETPOINT_LEDGER_DATA, or `data` where the server was started. */
export function dataFolder(): string {
  return path.resolve(/* turbopackIgnore: true */ process.env.SETPOINT_LEDGER_DATA || "data");
}
