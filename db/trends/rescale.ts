import type { Samples } from "./chunk-format";

const LARGEST = 2_147_483_647;

/** The same values with more decimals kept. Throws when one does not fit in 32 bits then. */
export function rescale(samples: Samples, decimals: number): Samples {
  if (samples.decimals === decimals) return samples;
  const factor = 10 ** (decimals - samples.decimals);
  if (factor < 1) throw new RangeError("decimals are only ever added: taking them away would round");
  const v = new Int32Array(samples.v.length);
  for (let i = 0; i < v.length; i++) {
    const scaled = (samples.v[i] as number) * factor;
    if (Math.abs(scaled) > LARGEST) throw tooLarge(samples.v[i] as number, samples.decimals, decimals);
    v[i] = scaled;
  }
  return { ts: samples.ts, v, decimals };
}

function tooLarge(v: number, from: number, to: number): RangeError {
  const value = (v / 10 ** from).toFixed(from);
  const limit = Math.floor(LARGEST / 10 ** to);
  return new RangeError(`the value ${value} cannot be kept with ${to} decimals: the limit is ±${limit} then`);
}
