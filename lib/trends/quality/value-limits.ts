import type { PointKind } from "../point-kind";
import type { PointSeries } from "../samples";

type Limits = { low: number; high: number };

const INDOORS_C = { low: 5, high: 45 };
const SETPOINT_C = { low: 5, high: 40 };
const COIL_C = { low: -10, high: 70 };
/** Half a percent for the rounding of controllers. */
const PERCENT = { low: -0.5, high: 100.5 };
const AIRFLOW_M3PS = { low: 0, high: 20 };
const METER = { low: 0, high: 50_000 };

/**
 * Values beyond which a reading of a kind is more likely wrong than true, in its stored unit. Common practice, no source. They are
 * narrower than the limits of an import, which keeps what could be.
 */
export const LIKELY_LIMITS: Record<PointKind, Limits> = {
  "zone-air-temp": INDOORS_C,
  "cooling-setpoint": SETPOINT_C,
  "heating-setpoint": SETPOINT_C,
  airflow: AIRFLOW_M3PS,
  "airflow-setpoint": AIRFLOW_M3PS,
  "damper-position": PERCENT,
  "reheat-valve": PERCENT,
  "discharge-air-temp": COIL_C,
  occupancy: { low: 0, high: 1 },
  "cooling-stage": { low: 0, high: 1 },
  "heater-power": { low: 0, high: 10_000 },
  "relative-humidity": { low: 5, high: 100 },
  "supply-air-temp": COIL_C,
  "outdoor-air-temp": { low: -50, high: 55 },
  "meter-power": METER,
  "meter-energy": METER,
};

export type UnlikelyValues = {
  samples: number;
  ofSamples: number;
  lowest: number;
  highest: number;
  fromUtcSeconds: number;
  toUtcSeconds: number;
};

/** The samples of a point beyond the likely limits of its kind; null when there are none. */
export function unlikelyValues(kind: PointKind, { samples: { ts, v, decimals } }: PointSeries): UnlikelyValues | null {
  const scale = 10 ** decimals;
  const { low, high } = LIKELY_LIMITS[kind];
  let found: UnlikelyValues | null = null;
  for (let i = 0; i < v.length; i++) {
    const value = (v[i] as number) / scale;
    if (value >= low && value <= high) continue;
    const at = ts[i] as number;
    found ??= { samples: 0, ofSamples: v.length, lowest: value, highest: value, fromUtcSeconds: at, toUtcSeconds: at };
    found.samples++;
    found.lowest = Math.min(found.lowest, value);
    found.highest = Math.max(found.highest, value);
    found.toUtcSeconds = at;
  }
  return found;
}
