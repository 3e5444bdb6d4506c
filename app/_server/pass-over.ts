/** What is read of a body that is refused, at most [bytes]: whoever sends more is cut off. */
const MOST_PASSED_OVER = 500_000_000;

/**
 * Lets a body that is too large run by, unkept: a browser that is cut off in the middle shows no answer at all, and the
 * reason would be lost.
 */
export async function passOver(request: Request): Promise<void> {
  const reader = request.body?.getReader();
  for (let passed = 0; reader && passed < MOST_PASSED_OVER; ) {
    const { done, value } = await reader.read();
    if (done) return;
    passed += value.byteLength;
  }
  await reader?.cancel();
}
