import { crc32 } from "node:zlib";
import { CRC_OFFSET } from "./chunk-format";

/** CRC-32 over a chunk without the field that holds it. */
export function chunkCrc(chunk: Uint8Array): number {
  return crc32(chunk.subarray(CRC_OFFSET + 4), crc32(chunk.subarray(0, CRC_OFFSET)));
}
