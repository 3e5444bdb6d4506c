import type { Input } from "./quantity";

/** Total with the inputs of one group at their low and at their high ends; low may give the higher total; `inputs` says how many inputs the line stands for. */
export type TornadoLine = { id: string; label: string; lowTotal: number; highTotal: number; inputs: number };

/** Total with one input at its ends. */
export type Ends = { group: Input["group"]; low: number; high: number };

/**
 * Lines of a tornado, widest first. Inputs of one group err independently (the sensor of each zone, the power of each
 * heater), so their changes add as the root of the sum of squares.
 */
export function tornadoLines(base: number, ends: readonly Ends[]): TornadoLine[] {
  const groups = new Map<string, Ends[]>();
  for (const each of ends) {
    const group = groups.get(each.group.id);
    if (group) group.push(each);
    else groups.set(each.group.id, [each]);
  }
  return [...groups.values()]
    .map((group) => lineOf(base, group))
    .filter((each) => each.lowTotal !== each.highTotal)
    .sort((a, b) => Math.abs(b.highTotal - b.lowTotal) - Math.abs(a.highTotal - a.lowTotal));
}

function lineOf(base: number, group: readonly Ends[]): TornadoLine {
  const [first] = group as [Ends];
  const name = { id: first.group.id, label: first.group.label, inputs: group.length };
  if (group.length === 1) return { ...name, lowTotal: first.low, highTotal: first.high };
  const root = (of: (each: Ends) => number): number => Math.sqrt(group.reduce((sum, each) => sum + of(each) ** 2, 0));
  const rises = group.reduce((sum, each) => sum + each.high - each.low, 0) >= 0 ? 1 : -1;
  return {
    ...name,
    lowTotal: base - rises * root((each) => each.low - base),
    highTotal: base + rises * root((each) => each.high - base),
  };
}
