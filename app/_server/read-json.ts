import { ServiceError } from "@/lib/services/errors";

/** A request's body as JSON, read no further than `mostBytes`. */
export async function readJson(request: Request, mostBytes: number): Promise<unknown> {
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  const tooLarge = new ServiceError("too-large", `The call is over ${mostBytes} bytes. Send it in several calls.`);
  if (Number(request.headers.get("content-length")) > mostBytes) throw tooLarge;
  for await (const chunk of (request.body ?? []) as AsyncIterable<Uint8Array>) {
    bytes += chunk.byteLength;
    if (bytes > mostBytes) throw tooLarge;
    chunks.push(chunk);
  }
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(Buffer.concat(chunks)));
  } catch (error) {
    throw new ServiceError(
      "invalid",
      `The call is not JSON: ${error instanceof Error ? error.message : "unreadable"}.`,
    );
  }
}
