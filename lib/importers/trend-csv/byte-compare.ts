/** Whether the `length` bytes at `a` are those at `b`, four at a time: texts that follow each other in a table differ at their end. */
export function areEqual(view: DataView, a: number, b: number, length: number): boolean {
  if (length < 4) {
    for (let i = 0; i < length; i++) if (view.getUint8(a + i) !== view.getUint8(b + i)) return false;
    return true;
  }
  const tail = length - 4;
  if (view.getInt32(a + tail, true) !== view.getInt32(b + tail, true)) return false;
  for (let i = 0; i < tail; i += 4) if (view.getInt32(a + i, true) !== view.getInt32(b + i, true)) return false;
  return true;
}
