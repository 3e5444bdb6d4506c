export type DecodedText =
  | { status: "ok"; text: string; encoding: "utf-8" | "utf-16le" | "utf-16be" | "windows-1252" }
  | { status: "not-text"; message: string };

const SIGNATURES: readonly { bytes: readonly number[]; message: string }[] = [
  {
    bytes: [0x50, 0x4b, 0x03, 0x04],
    message:
      "This is a zip archive or a spreadsheet workbook, not a text file. Unpack it, or save the sheet as CSV, and upload that.",
  },
  { bytes: [0x1f, 0x8b], message: "This is a gzip archive. Unpack it and upload the file inside." },
  { bytes: [0x25, 0x50, 0x44, 0x46], message: "This is a PDF. Upload the table itself, saved as CSV." },
  {
    bytes: [0xd0, 0xcf, 0x11, 0xe0],
    message: "This is an old spreadsheet workbook. Save the sheet as CSV and upload that.",
  },
];

/**
 * Text of a small file. A byte order mark decides; without one, NUL bytes on one side only mean UTF-16, bytes that
 * are valid UTF-8 are UTF-8, and anything else is windows-1252 (the usual encoding of older spreadsheets).
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const known = SIGNATURES.find((signature) => signature.bytes.every((byte, at) => bytes[at] === byte));
  if (known) return { status: "not-text", message: known.message };
  const encoding = encodingOf(bytes);
  if (encoding === "binary") {
    return { status: "not-text", message: "This is not a text file. Upload a file that opens in a text editor." };
  }
  return { status: "ok", text: new TextDecoder(encoding).decode(bytes), encoding };
}

function encodingOf(bytes: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" | "windows-1252" | "binary" {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  const sample = bytes.subarray(0, 4096);
  let evenNuls = 0;
  let oddNuls = 0;
  for (const [at, byte] of sample.entries()) {
    if (byte !== 0) continue;
    if (at % 2 === 0) evenNuls++;
    else oddNuls++;
  }
  if (oddNuls > 0 && evenNuls === 0) return "utf-16le";
  if (evenNuls > 0 && oddNuls === 0) return "utf-16be";
  if (evenNuls > 0) return "binary";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return "utf-8";
  } catch {
    return "windows-1252";
  }
}
