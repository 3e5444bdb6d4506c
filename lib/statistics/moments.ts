/** Arithmetic mean. Throws on an empty list. */
export function mean(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RangeError("a mean needs at least one value");
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sum / values.length;
}

/** Sample standard deviation (n - 1). Needs two values. */
export function sampleDeviation(values: ArrayLike<number>): number {
  if (values.length < 2) throw new RangeError("a sample deviation needs at least two values");
  const centre = mean(values);
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += ((values[i] as number) - centre) ** 2;
  return Math.sqrt(squares / (values.length - 1));
}
