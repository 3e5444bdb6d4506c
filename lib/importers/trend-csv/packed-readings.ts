import type { Scratch } from "./scratch";
import type { Slabs } from "./slabs";
import type { WholeValues, WrittenValues } from "./trend-file";

const POWERS = [1, 10, 100, 1000] as const;

/** Values as whole numbers times 10^-decimals, where that gives each back exactly, else as they were. */
export type PackedValues = WholeValues | { plain: Float64Array };

export function packValues(values: Float64Array, slabs: Slabs, scratch: Scratch): PackedValues {
  const scaled = scratch.int32("scaled", values.length);
  for (let decimals = 0; decimals < POWERS.length; decimals++) {
    if (!scaleInto(scaled, values, POWERS[decimals] as number)) continue;
    const { lowest, highest } = boundsOf(scaled);
    const kept = lowest > -32768 && highest < 32768 ? slabs.int16(values.length) : slabs.int32(values.length);
    kept.set(scaled);
    return { scaled: kept, decimals, lowest, highest };
  }
  const plain = slabs.float64(values.length);
  plain.set(values);
  return { plain };
}

/**
 * The same in one go for values of which it is known how they are written: one of at most `decimals` decimals is a whole
 * number times 10^-decimals, to the last bit. Null where that takes more than 32 bits.
 */
export function packWritten(values: Float64Array, written: WrittenValues, slabs: Slabs): WholeValues | null {
  const { decimals } = written;
  const power = POWERS[decimals];
  if (power === undefined) return null;
  const [lowest, highest] = [Math.round(written.lowest * power), Math.round(written.highest * power)];
  if (lowest < -(2 ** 31) || highest >= 2 ** 31 - 1) return null;
  const scaled = lowest > -32768 && highest < 32768 ? slabs.int16(values.length) : slabs.int32(values.length);
  for (let i = 0; i < scaled.length; i++) {
    const value = (values[i] as number) * power;
    scaled[i] = value < 0 ? value - 0.5 : value + 0.5;
  }
  return { scaled, decimals, lowest, highest };
}

/** Scales the values; false as soon as one is not exactly a whole number of that power. */
function scaleInto(scaled: Int32Array, values: Float64Array, power: number): boolean {
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    // Beyond 32 bits it is not the value any more.
    const whole = (value * power + (value < 0 ? -0.5 : 0.5)) | 0;
    if (whole / power !== value) return false;
    scaled[i] = whole;
  }
  return true;
}

function boundsOf(scaled: Int32Array): { lowest: number; highest: number } {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < scaled.length; i++) {
    const whole = scaled[i] as number;
    if (whole < lowest) lowest = whole;
    if (whole > highest) highest = whole;
  }
  return { lowest, highest };
}

/** The values of several packs, one after the other; `out` has room for all of them. */
export function unpackValues(packs: readonly PackedValues[], out: Float64Array): void {
  let at = 0;
  for (const pack of packs) {
    if ("plain" in pack) {
      out.set(pack.plain, at);
      at += pack.plain.length;
      continue;
    }
    const { scaled, decimals } = pack;
    const power = POWERS[decimals] as number;
    for (let i = 0; i < scaled.length; i++) out[at++] = (scaled[i] as number) / power;
  }
}

/** Whether all of the packs hold whole numbers. */
export const areWhole = (packs: readonly PackedValues[]): packs is readonly WholeValues[] =>
  packs.every((pack) => "scaled" in pack);

export type PackedInstants = Uint32Array | Float64Array;

export function packInstants(instants: Float64Array, slabs: Slabs): PackedInstants {
  const packed = slabs.uint32(instants.length);
  for (let i = 0; i < packed.length; i++) {
    packed[i] = instants[i] as number;
    if (packed[i] !== instants[i]) {
      const plain = slabs.float64(instants.length);
      plain.set(instants);
      return plain;
    }
  }
  return packed;
}

/** Stretches of instants: where each begins, and where it ends. */
export type PackedSelection = Int32Array;

/** Steps in which stretches are looked for: log gaps are few. */
const STRIDE = 64;

/** Which instants of `among` stand in `instants`; null when all do. Both ascend, and all of `instants` are among them. */
export function packSelection(
  instants: Float64Array,
  among: Float64Array,
  slabs: Slabs,
  scratch: Scratch,
): PackedSelection | null {
  const count = instants.length;
  if (count === among.length) return null;
  const stretches = scratch.int32("stretches", 2 * count);
  let length = 0;
  let i = 0;
  for (let next = 0; next < count; ) {
    while (among[i] !== instants[next]) i++;
    stretches[length++] = i;
    // No instant lies between others that lie equally far apart in both.
    while (next + STRIDE < count && among[i + STRIDE] === instants[next + STRIDE]) {
      i += STRIDE;
      next += STRIDE;
    }
    while (next < count && among[i] === instants[next]) {
      i++;
      next++;
    }
    stretches[length++] = i;
  }
  const packed = slabs.int32(length);
  packed.set(stretches.subarray(0, length));
  return packed;
}

/** The instants of a selection; `out` has room for all of them. */
export function unpackSelection(stretches: PackedSelection, among: PackedInstants, out: Float64Array): void {
  let next = 0;
  for (let k = 0; k < stretches.length; k += 2) {
    const end = stretches[k + 1] as number;
    for (let i = stretches[k] as number; i < end; i++) out[next++] = among[i] as number;
  }
}
