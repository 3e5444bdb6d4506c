import type { TrendSlice } from "@/lib/trends/trend-store";

/** Points of a zone in `syntheticYear`: air 1, airflow 2, cooling setpoint 3 and so on from zone to zone. */
export const airOf = (zone: number): number => zone * 3 + 1;
export const setpointOf = (zone: number): number => zone * 3 + 3;

/**
 * The bare loop that reads are measured against: degree-hours [K·h] of zone air below a cooling setpoint that holds until
 * its next change, quarter hours, both in thousandths of a degree.
 */
export function degreeHours(air: TrendSlice, setpoint: TrendSlice): number {
  return (sumBelow(air.ts, air.v, setpoint.ts, setpoint.v) / 1000) * 0.25;
}

function sumBelow(airTs: Float64Array, air: Int32Array, setpointTs: Float64Array, setpoint: Int32Array): number {
  let sum = 0;
  let j = -1;
  let next = setpointTs.length > 0 ? (setpointTs[0] as number) : Number.POSITIVE_INFINITY;
  for (let i = 0; i < airTs.length; i++) {
    while (next <= (airTs[i] as number)) {
      j++;
      next = j + 1 < setpointTs.length ? (setpointTs[j + 1] as number) : Number.POSITIVE_INFINITY;
    }
    const below = j < 0 ? 0 : (setpoint[j] as number) - (air[i] as number);
    if (below > 0) sum += below;
  }
  return sum;
}

/** Moments that reports were made at: 5,000 over the year and the zones, in no order. */
export function reportMoments(zones: number, firstTs: number): { zone: number; ts: number }[] {
  return Array.from({ length: 5000 }, (_, i) => ({
    zone: (i * 37) % zones,
    ts: firstTs + 86_400 + ((i * 7_919_117) % 31_000_000),
  }));
}
