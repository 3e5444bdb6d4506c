import { assessCircuit, type CircuitAssessment, type CircuitInput, highestA } from "./assess-circuit";

/** Devices to move to another circuit or retire, by their place in the list, and how the circuit stands without them. */
export type Relief = { leaving: readonly number[]; leavingA: number; after: CircuitAssessment };

const MOST_SHOWN = 3;
/** Beyond this a choice of three among the devices takes too long to follow on a page. */
const MOST_TOGETHER = 4;

/**
 * The smallest sets of devices whose leaving brings the circuit back under every limit, those that take the least current first.
 * Empty when nothing is exceeded, and when no set does: then what is not on the register is too much by itself.
 */
export function reliefOf(input: CircuitInput): Relief[] {
  if (isUnder(assessCircuit(input))) return [];
  for (let size = 1; size <= Math.min(MOST_TOGETHER, input.devices.length); size += 1) {
    const found = choices(input.devices.length, size).flatMap((leaving) => {
      const after = without(input, leaving);
      return isUnder(after) ? { leaving, leavingA: currentOf(input, leaving), after } : [];
    });
    if (found.length > 0) return found.sort((a, b) => a.leavingA - b.leavingA).slice(0, MOST_SHOWN);
  }
  return [];
}

/** The circuit without some of its devices. */
export function without(input: CircuitInput, leaving: readonly number[]): CircuitAssessment {
  return assessCircuit({ ...input, devices: input.devices.filter((_, index) => !leaving.includes(index)) });
}

/** True when no limit is known to be exceeded; a circuit of which half is known may be. */
const isUnder = (assessment: CircuitAssessment): boolean =>
  assessment.status === "not-established" || assessment.verdict === "within-limits";

const currentOf = (input: CircuitInput, indexes: readonly number[]): number =>
  indexes.reduce((sum, index) => {
    const device = input.devices[index];
    return sum + (device ? highestA(device) : 0);
  }, 0);

/** Every set of `size` places out of `count`. */
function choices(count: number, size: number, from = 0): number[][] {
  if (size === 0) return [[]];
  const sets: number[][] = [];
  for (let first = from; first <= count - size; first += 1)
    for (const rest of choices(count, size - 1, first + 1)) sets.push([first, ...rest]);
  return sets;
}
