export type TextEncodingName = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/**
 * Encoding by the first bytes of a file: byte order mark first, then zeros on one parity (UTF-16 without a mark), else
 * UTF-8 for the time being (each part is looked at again). Null when zero bytes say that it is no text.
 */
export function encodingByHead(head: Uint8Array): TextEncodingName | null {
  const encoding = markedEncoding(head) ?? unmarkedUtf16(head);
  return encoding === "binary" ? null : (encoding ?? "utf-8");
}

function markedEncoding(bytes: Uint8Array): TextEncodingName | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return null;
}

function unmarkedUtf16(bytes: Uint8Array): TextEncodingName | "binary" | null {
  const looked = Math.min(bytes.length, 65536);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < looked; i++) {
    if (bytes[i] !== 0) continue;
    if (i % 2 === 0) even++;
    else odd++;
  }
  if (even + odd === 0) return null;
  const half = looked / 2;
  if (odd > 0.4 * half && even < 0.02 * half) return "utf-16le";
  if (even > 0.4 * half && odd < 0.02 * half) return "utf-16be";
  return "binary";
}
