/**
 * Whether the `length` bytes at `a` are those at `b`, eight at a time, the last ones first: texts that follow each other in
 * a table differ at their end. They are compared as doubles, which are fast to read. Of UTF-8 that is exact: a double that
 * is no number would need 0x7f behind 0xf0 or a byte of 0xff, and the zeros that are equal with another sign a 0x80 behind
 * a zero; no text has either.
 */
export function areEqual(view: DataView, a: number, b: number, length: number): boolean {
  if (length < 8) return areEqualShort(view, a, b, length);
  const tail = length - 8;
  if (view.getFloat64(a + tail, true) !== view.getFloat64(b + tail, true)) return false;
  for (let i = 0; i < tail; i += 8) if (view.getFloat64(a + i, true) !== view.getFloat64(b + i, true)) return false;
  return true;
}

function areEqualShort(view: DataView, a: number, b: number, length: number): boolean {
  if (length < 4) {
    for (let i = 0; i < length; i++) if (view.getUint8(a + i) !== view.getUint8(b + i)) return false;
    return true;
  }
  const tail = length - 4;
  return (
    view.getInt32(a + tail, true) === view.getInt32(b + tail, true) && view.getInt32(a, true) === view.getInt32(b, true)
  );
}
