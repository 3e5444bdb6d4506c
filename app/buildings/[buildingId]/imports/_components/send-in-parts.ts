import type { FileOutcome } from "@/lib/services/imports/take-file";
import { LineDropped, type PartAnswer, type PartTransport } from "./part-transport";

export const PART_BYTES = 8_000_000;
/** Parts are made smaller where something on the way takes no larger ones, but not below this. */
const SMALLEST_PART_BYTES = 250_000;
const LONGEST_REST_MS = 30_000;

/** The server will not take the file: sending it again as it is would not help. */
export class Refused extends Error {}

export type Sending = {
  file: File;
  /** Address that uploads are begun at. */
  base: string;
  /** Address of an upload of this file that was begun before. */
  known: string | null;
  transport: PartTransport;
  signal: AbortSignal;
  /** Bytes that are at the server or on their way to it. */
  onProgress: (bytes: number) => void;
  /** Where the parts go, as soon as it is known. */
  onAddress: (address: string | null) => void;
  /** The line dropped; tried again after so long. 0 when it goes on. */
  onRest: (ms: number) => void;
  rest: (ms: number, signal: AbortSignal) => Promise<void>;
};

/**
 * Sends a file in parts, each from where the server says the file ends. After a dropped line it rests, longer each
 * time up to half a minute, asks for the offset and goes on; it gives up only when the server refuses the file.
 */
export async function sendInParts(sending: Sending): Promise<FileOutcome> {
  const { file, signal, onProgress, onAddress, onRest, rest } = sending;
  if (file.size === 0) throw new Refused("The file is empty: export it again.");
  let address = sending.known;
  let offset: number | null = address ? null : 0;
  let partBytes = PART_BYTES;
  for (let drops = 0; ; ) {
    try {
      const answer: PartAnswer = await nextStep(sending, { address, offset, partBytes });
      if (drops > 0) onRest(0);
      drops = 0;
      if (answer.outcome) return answer.outcome;
      if (
        answer.status === 413 &&
        partBytes > SMALLEST_PART_BYTES &&
        offset !== null &&
        (address || file.size <= partBytes)
      ) {
        partBytes = Math.max(SMALLEST_PART_BYTES, Math.floor(partBytes / 2));
      } else if ((answer.status === 404 || answer.status === 410) && address && address === sending.known) {
        // What was begun before is no longer there: from the beginning.
        address = null;
        offset = 0;
        onAddress(null);
      } else if (answer.status === 409 && answer.offset !== null) offset = answer.offset;
      else if (answer.status >= 200 && answer.status < 300) {
        address ??= answer.location;
        onAddress(address);
        offset = answer.offset ?? offset;
      } else if (isPassing(answer.status)) throw new LineDropped();
      else throw new Refused(answer.detail);
      onProgress(offset ?? 0);
    } catch (error) {
      if (!(error instanceof LineDropped)) throw error;
      const ms = Math.min(1000 * 2 ** drops, LONGEST_REST_MS);
      drops++;
      onRest(ms);
      await rest(ms, signal);
      // What came of the part before the line dropped is asked for.
      if (address) offset = null;
    }
  }
}

/** The next request of an upload: its beginning, the question how far it is, or its next part. */
function nextStep(
  { file, base, transport, signal, onProgress }: Sending,
  { address, offset, partBytes }: { address: string | null; offset: number | null; partBytes: number },
): Promise<PartAnswer> {
  if (!address) {
    const whole = file.size <= partBytes;
    const query = new URLSearchParams({ name: file.name, modified: String(file.lastModified) });
    return transport({
      method: "POST",
      address: `${base}?${query}`,
      headers: { "upload-complete": whole ? "?1" : "?0", "upload-length": String(file.size) },
      content: whole ? file : undefined,
      signal,
      onSent: onProgress,
    });
  }
  if (offset === null) return transport({ method: "HEAD", address, signal });
  const end = Math.min(offset + partBytes, file.size);
  return transport({
    method: "PATCH",
    address,
    headers: {
      "content-type": "application/partial-upload",
      "upload-offset": String(offset),
      "upload-complete": end === file.size ? "?1" : "?0",
    },
    content: file.slice(offset, end),
    signal,
    onSent: (bytes) => onProgress(offset + bytes),
  });
}

/** Answers that mean "not now": a proxy whose server restarts, a part that took too long, too many calls. */
const isPassing = (status: number): boolean =>
  status === 0 || status === 408 || status === 429 || (status >= 500 && status !== 507);
