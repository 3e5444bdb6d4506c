const LONGEST = 200;

/**
 * A file's name without the folders, drives and control characters that a sender may have put into it. It is shown and
 * kept beside the file; the file itself is kept under its SHA-256.
 */
export function plainFileName(given: string): string {
  const last = given.normalize("NFC").split(/[/\\]/).at(-1) ?? "";
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  const plain = last.replace(/[\u0000-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "").trim();
  const kept = plain.replace(/^[a-z]:/i, "").trim();
  if (/^\.*$/.test(kept)) return "unnamed file";
  return kept.length <= LONGEST ? kept : `${kept.slice(0, LONGEST - 20)}\u2026${kept.slice(-19)}`;
}
