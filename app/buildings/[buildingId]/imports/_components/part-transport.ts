import type { FileOutcome } from "@/lib/services/imports/take-file";

/** What the server answers to a part, or to the question how far an upload is. */
export type PartAnswer = {
  status: number;
  /** Bytes that are there. */
  offset: number | null;
  /** Where the parts of a new upload go. */
  location: string | null;
  /** What is wrong, in a sentence. */
  detail: string;
  /** What became of the file, once it is whole. */
  outcome: FileOutcome | null;
};

/** The line dropped, or the server did not answer. */
export class LineDropped extends Error {}

export type PartRequest = {
  method: "POST" | "PATCH" | "HEAD";
  address: string;
  headers?: Record<string, string>;
  content?: Blob;
  signal: AbortSignal;
  /** Bytes of the content that have left. */
  onSent?: (bytes: number) => void;
};

export type PartTransport = (request: PartRequest) => Promise<PartAnswer>;

/** Sends by XMLHttpRequest, which says how much of a part has left. */
export const sendPart: PartTransport = ({ method, address, headers = {}, content, signal, onSent }) =>
  new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    const stop = () => request.abort();
    request.open(method, address);
    for (const [name, value] of Object.entries(headers)) request.setRequestHeader(name, value);
    request.upload.onprogress = (event) => onSent?.(event.loaded);
    request.onload = () => resolve(answerOf(request));
    request.onerror = () => reject(new LineDropped());
    request.ontimeout = request.onerror;
    request.onabort = () => reject(signal.reason);
    request.onloadend = () => signal.removeEventListener("abort", stop);
    signal.addEventListener("abort", stop);
    if (signal.aborted) reject(signal.reason);
    else request.send(content ?? null);
  });

function answerOf(request: XMLHttpRequest): PartAnswer {
  const offset = request.getResponseHeader("upload-offset");
  const body = bodyOf(request.responseText);
  const isWhole = request.status === 200 && typeof body.fileName === "string";
  return {
    status: request.status,
    offset: offset === null ? null : Number(offset),
    location: request.getResponseHeader("location"),
    detail: typeof body.detail === "string" ? body.detail : `The server answered ${request.status}.`,
    outcome: isWhole ? (body as FileOutcome) : null,
  };
}

function bodyOf(text: string): Partial<FileOutcome> & { detail?: unknown } {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}
