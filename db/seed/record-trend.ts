import { type PointKind, STORED_DECIMALS } from "@/lib/trends/point-kind";
import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";
import { normal, streamOf } from "./normal";
import { canBeRecorded, isStuck, LOST_SHARE } from "./trend-defects";

/** A trend point of the demo building with its samples as the trend store takes them. */
export type RecordedTrend = {
  zoneCode: string | null;
  kind: PointKind;
  externalName: string;
  fileUnit: string;
  sampling: "interval" | "change-of-value";
  ts: Float64Array;
  v: Int32Array;
  decimals: number;
};

export type PointName = { zoneCode: string | null; kind: PointKind; externalName: string };

/** Steps in which the controllers report values, and the noise of their sensors as a standard deviation. */
const RESOLUTION: Partial<Record<PointKind, { fileUnit: string; step: number; noise: number; noiseShare: number }>> = {
  "zone-air-temp": { fileUnit: "degC", step: 0.1, noise: 0.05, noiseShare: 0 },
  "discharge-air-temp": { fileUnit: "degC", step: 0.1, noise: 0.12, noiseShare: 0 },
  "supply-air-temp": { fileUnit: "degC", step: 0.1, noise: 0.12, noiseShare: 0 },
  "outdoor-air-temp": { fileUnit: "degC", step: 0.1, noise: 0.1, noiseShare: 0 },
  "meter-power": { fileUnit: "kW", step: 0.1, noise: 0, noiseShare: 0.004 },
  airflow: { fileUnit: "litrePerSecond", step: 0.001, noise: 0, noiseShare: 0.012 },
  "damper-position": { fileUnit: "percent", step: 1, noise: 0, noiseShare: 0 },
  "reheat-valve": { fileUnit: "percent", step: 1, noise: 0, noiseShare: 0 },
};

/** Samples of a measured point every quarter of an hour, in its stored unit, with noise, resolution and losses. */
export function recordInterval(
  point: PointName,
  valueAt: (step: number) => number,
  calendar: DemoCalendar,
): RecordedTrend {
  const { zoneCode, kind } = point;
  const resolution = RESOLUTION[kind];
  if (!resolution) throw new RangeError(`${kind} is not measured at intervals`);
  const random = streamOf(`${point.externalName}/noise`);
  const { startUtcSeconds, count } = calendar.span;
  const decimals = STORED_DECIMALS[kind];
  const stepsPerUnit = Math.round(1 / resolution.step);
  const scale = 10 ** decimals / stepsPerUnit;
  const ts = new Float64Array(count);
  const v = new Int32Array(count);
  let kept = 0;
  let last = 0;
  for (let i = 0; i < count; i++) {
    const at = startUtcSeconds + i * STEP_SECONDS;
    const exact = valueAt(i);
    const noise = (resolution.noise + resolution.noiseShare * Math.abs(exact)) * normal(random);
    const lost = random() < LOST_SHARE;
    if (!isStuck(zoneCode, kind, at)) last = Math.round((exact + noise) * stepsPerUnit) * scale;
    if (lost || !canBeRecorded(zoneCode, at)) continue;
    ts[kept] = at;
    v[kept] = last;
    kept++;
  }
  return {
    ...point,
    fileUnit: resolution.fileUnit,
    sampling: "interval",
    ts: ts.slice(0, kept),
    v: v.slice(0, kept),
    decimals,
  };
}

/** Controllers report a setpoint when it changes, once a day shortly after midnight, and when they come back. */
const DAILY_REPORT_MINUTE = 15;

/** Samples of a setpoint as it changes. The controller needs some seconds to tell. */
export function recordChanges(point: PointName, values: Float64Array, calendar: DemoCalendar): RecordedTrend {
  const random = streamOf(`${point.externalName}/delay`);
  const { startUtcSeconds, count } = calendar.span;
  const decimals = STORED_DECIMALS[point.kind];
  const ts: number[] = [];
  const v: number[] = [];
  let told = Number.NaN;
  for (let i = 0; i < count; i++) {
    const at = startUtcSeconds + i * STEP_SECONDS;
    if (!canBeRecorded(point.zoneCode, at)) {
      told = Number.NaN;
      continue;
    }
    const value = Math.round((values[i] as number) * 10 ** decimals);
    if (value === told && calendar.minuteOfDay[i] !== DAILY_REPORT_MINUTE) continue;
    told = value;
    ts.push(i === 0 ? at : at + Math.floor(4 * random()));
    v.push(value);
  }
  return {
    ...point,
    fileUnit: "degC",
    sampling: "change-of-value",
    ts: Float64Array.from(ts),
    v: Int32Array.from(v),
    decimals,
  };
}
