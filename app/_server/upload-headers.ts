import { ServiceError } from "@/lib/services/errors";

/** What the headers of an upload's request say; null where they do not say it, or not in the form of the standard. */
export type UploadHeaders = {
  offset: number | null;
  length: number | null;
  complete: boolean | null;
  contentLength: number | null;
  /** SHA-256 of the request's content, and of the whole file, in hexadecimal (RFC 9530). */
  contentSha256: string | undefined;
  fileSha256: string | undefined;
};

export function readUploadHeaders(headers: Headers): UploadHeaders {
  const complete = headers.get("upload-complete");
  return {
    offset: wholeNumber(headers.get("upload-offset")),
    length: wholeNumber(headers.get("upload-length")),
    complete: complete === "?1" ? true : complete === "?0" ? false : null,
    contentLength: wholeNumber(headers.get("content-length")),
    contentSha256: sha256Of(headers.get("content-digest"), "Content-Digest"),
    fileSha256: sha256Of(headers.get("repr-digest"), "Repr-Digest"),
  };
}

/** The file's name: from `?name=`, else from Content-Disposition (RFC 6266). */
export function fileNameOf(request: Request): string {
  const named = new URL(request.url).searchParams.get("name");
  if (named) return named;
  const disposition = request.headers.get("content-disposition") ?? "";
  const extended = /filename\*\s*=\s*UTF-8''([^;\s]+)/i.exec(disposition)?.[1];
  if (extended) return decoded(extended);
  const plain = /filename\s*=\s*(?:"((?:[^"\\]|\\.)*)"|([^;\s]+))/i.exec(disposition);
  return plain?.[1]?.replace(/\\(.)/g, "$1") ?? plain?.[2] ?? "";
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    throw new ServiceError(
      "invalid",
      "The file's name in Content-Disposition cannot be read. Give it as ?name= instead.",
    );
  }
}

function wholeNumber(text: string | null): number | null {
  return text !== null && /^\d{1,15}$/.test(text) ? Number(text) : null;
}

/** `sha-256=:<base64>:` as hexadecimal. Other digests are not looked at; one that cannot be read is refused. */
function sha256Of(text: string | null, header: string): string | undefined {
  const given = /(?:^|,)\s*sha-256\s*=\s*([^,]*)/i.exec(text ?? "")?.[1]?.trim();
  if (given === undefined) return undefined;
  const bytes = Buffer.from(/^:([A-Za-z0-9+/]{43}=):$/.exec(given)?.[1] ?? "", "base64");
  if (bytes.length !== 32)
    throw new ServiceError(
      "invalid",
      `${header} does not hold a SHA-256: write it as sha-256=:<base64 of the 32 bytes>:.`,
    );
  return bytes.toString("hex");
}
