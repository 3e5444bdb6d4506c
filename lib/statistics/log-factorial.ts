const table: number[] = [0];

/** Natural logarithm of n!, by its sum. */
export function logFactorial(n: number): number {
  for (let k = table.length; k <= n; k++) table.push((table[k - 1] as number) + Math.log(k));
  return table[n] as number;
}
