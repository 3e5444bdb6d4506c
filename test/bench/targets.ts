/** A figure that has to hold: at most, or at least, a limit. */
export type Target = { what: string; figure: number; limit: number; atLeast?: boolean; unit: string };

const checked: (Target & { holds: boolean })[] = [];

/** Prints whether a figure holds, with figure and limit; the bench ends with exit code 1 when one does not. */
export function target(each: Target): void {
  const { what, figure, limit, atLeast = false, unit } = each;
  const holds = atLeast ? figure >= limit : figure <= limit;
  checked.push({ ...each, holds });
  const word = holds ? "holds " : "MISSED";
  line(`${word} ${what}: ${plain(figure)} ${unit} (${atLeast ? "at least" : "at most"} ${plain(limit)})`);
}

/** A target that could not be measured at all: counts as missed, with the reason. */
export function unmeasured(what: string, reason: string): void {
  checked.push({ what, figure: Number.NaN, limit: Number.NaN, unit: "", holds: false });
  line(`MISSED ${what}: not measured, ${reason}`);
}

/** Last line of a bench. */
export function closeTargets(): void {
  const missed = checked.filter(({ holds }) => !holds).length;
  if (checked.length > 0) line(`${checked.length - missed} of ${checked.length} figures hold.`);
  if (missed > 0) process.exitCode = 1;
}

export function line(text: string): void {
  process.stdout.write(`${text}\n`);
}

export const plain = (n: number): string => (Number.isInteger(n) ? String(n) : n.toFixed(Math.abs(n) < 10 ? 3 : 1));
