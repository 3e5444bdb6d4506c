import { headers } from "next/headers";

/** Scheme and host by which the reader reached this page: a link that is printed must work for others the same way. */
export async function siteOrigin(): Promise<string> {
  const request = await headers();
  return `${request.get("x-forwarded-proto") ?? "http"}://${request.get("host") ?? ""}`;
}
