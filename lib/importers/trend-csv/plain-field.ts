import { QUOTE } from "./rows";

const CR = 13;
const LF = 10;
const OPEN = 123;
const CLOSE = 125;

/**
 * Behind the field that begins at `from`, quotes about it included; -1 where it takes a closer look to tell: a quote that
 * does not close before the end of the line or is doubled, a brace that another field may close.
 */
export function fieldEnd(bytes: Uint8Array, from: number, mark: number): number {
  const isQuoted = bytes[from] === QUOTE;
  let isOpen = false;
  let at = isQuoted ? from + 1 : from;
  for (; at < bytes.length; at++) {
    const code = bytes[at] as number;
    if (code === LF || code === CR || code === (isQuoted ? QUOTE : mark)) break;
    if (code === OPEN) isOpen = true;
    else if (code === CLOSE) isOpen = false;
  }
  if (isOpen) return -1;
  if (!isQuoted) return at;
  if (bytes[at] !== QUOTE) return -1;
  at++;
  return at === bytes.length || bytes[at] === mark || bytes[at] === LF || bytes[at] === CR ? at : -1;
}

/** A field's text without the quotes about it. */
export const withoutQuotes = (field: string): string => (field.startsWith('"') ? field.slice(1, -1) : field);
