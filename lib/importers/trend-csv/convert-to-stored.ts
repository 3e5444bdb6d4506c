import { type PointKind, STORED_DECIMALS, STORED_UNIT, type StoredUnit } from "@/lib/trends/point-kind";
import { M3PS_PER_CFM } from "@/lib/units/airflow";
import { convertWhole } from "./convert-whole";
import { makeFinding } from "./findings";
import type { Scratch } from "./scratch";
import { stateAsNumber } from "./state-words";
import type { FileUnit, PartPoint, TrendFinding, TrendPoint } from "./trend-file";

export type StoredSamples = {
  status: "ok";
  /** UTC seconds, ascending. */
  ts: Float64Array;
  /** Values in the kind's stored unit, times 10^decimals. */
  v: Int32Array;
  decimals: number;
  /** Readings that were left out, by reason. */
  implausible: number;
  unknownStates: number;
  findings: TrendFinding[];
};
export type ConversionVerdict =
  | StoredSamples
  | { status: "unit-does-not-fit"; kind: PointKind; unit: FileUnit | null; sentence: string };

/** `(value - less) * times / over`: the formulas of `lib/units` as numbers, so that a column needs no call for each value. */
type Conversion = { less: number; times: number; over: number };
const AS_IT_IS: Conversion = { less: 0, times: 1, over: 1 };

/** From a file unit to each stored unit. */
export const TO_STORED: Record<StoredUnit, Partial<Record<FileUnit, Conversion>>> = {
  degC: { degF: { less: 32, times: 1, over: 1.8 }, degC: AS_IT_IS, kelvin: { less: 273.15, times: 1, over: 1 } },
  m3ps: {
    cfm: { less: 0, times: M3PS_PER_CFM, over: 1 },
    m3PerHour: { less: 0, times: 1, over: 3600 },
    litrePerSecond: { less: 0, times: 1, over: 1000 },
    m3PerSecond: AS_IT_IS,
  },
  percent: { percent: AS_IT_IS },
  percentRH: { percentRH: AS_IT_IS, percent: AS_IT_IS },
  W: { W: AS_IT_IS, kW: { less: 0, times: 1000, over: 1 } },
  state: {},
  kW: { kW: AS_IT_IS, W: { less: 0, times: 1, over: 1000 } },
  kWh: { kWh: AS_IT_IS },
};

/**
 * Limits in stored units beyond which a value cannot be. Zone air: -30 to 60 °C (rule 9 of the trend samples). The
 * others are common practice, no source: setpoints 5 to 45 °C (a 0 °F that stands for "no reading" is out), air behind a
 * coil -30 to 90 °C, outdoors -60 to 60 °C, flows 0 to 100 m³/s, positions -5 to 105 % (a calibration may be a little
 * off; what lies within is kept as it is, never clamped), heaters 0 to 20 kW, humidity 0 to 105 %, meters 0 to 200,000 kW and
 * kWh (a building that sends power out would need a meter each way).
 */
export const PLAUSIBLE: Record<PointKind, { low: number; high: number }> = {
  "zone-air-temp": { low: -30, high: 60 },
  "cooling-setpoint": { low: 5, high: 45 },
  "heating-setpoint": { low: 5, high: 45 },
  airflow: { low: 0, high: 100 },
  "airflow-setpoint": { low: 0, high: 100 },
  "damper-position": { low: -5, high: 105 },
  "reheat-valve": { low: -5, high: 105 },
  "discharge-air-temp": { low: -30, high: 90 },
  occupancy: { low: 0, high: 1 },
  "cooling-stage": { low: 0, high: 1 },
  "heater-power": { low: 0, high: 20_000 },
  "relative-humidity": { low: 0, high: 105 },
  "supply-air-temp": { low: -30, high: 90 },
  "outdoor-air-temp": { low: -60, high: 60 },
  "meter-power": { low: 0, high: 200_000 },
  "meter-energy": { low: 0, high: 200_000 },
};

/**
 * Readings of a point as they are stored for a kind. Implausible values and states that are neither on nor off are
 * left out and reported; nothing is clamped. `unit` goes before the point's own (a confirmed mapping knows better). The
 * samples are good as long as the point's arrays and, with `scratch`, until the next conversion.
 */
export function convertToStored(
  point: Pick<PartPoint, "name" | "kind" | "unit" | "tsUtcSeconds" | "values" | "stateNames" | "whole">,
  kind: PointKind,
  unit: FileUnit | null = point.unit,
  scratch?: Scratch,
): ConversionVerdict {
  const stored = STORED_UNIT[kind];
  const isState = stored === "state" || point.kind === "state";
  const conversion = isState ? AS_IT_IS : unit === null ? undefined : TO_STORED[stored][unit];
  if (!conversion || (isState && stored !== "state"))
    return doesNotFit(point.name, kind, point.kind === "state" ? null : unit);
  const { less, times: factor, over } = conversion;
  const decimals = STORED_DECIMALS[kind];
  const scale = 10 ** decimals;
  const { low, high } = PLAUSIBLE[kind];
  const times = point.tsUtcSeconds;
  const n = times.length;
  const inStoredUnit = (value: number): number => ((value - less) * factor) / over;
  const storedAs = (value: number): number | null => {
    const converted = inStoredUnit(value);
    return converted >= low && converted <= high ? Math.round(converted * scale) : null;
  };
  const byTable = point.whole && !isState ? convertWhole(point.whole, storedAs, scratch) : null;
  if (byTable) return { status: "ok", ts: times, v: byTable, decimals, implausible: 0, unknownStates: 0, findings: [] };
  const raws = isState ? statesAsNumbers(point) : point.values;
  const ts = scratch?.float64("stored times", n) ?? new Float64Array(n);
  const v = scratch?.int32("stored values", n) ?? new Int32Array(n);
  let kept = 0;
  let implausible = 0;
  let unknownStates = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    const raw = raws[i] as number;
    const value = inStoredUnit(raw);
    if (value >= low && value <= high) {
      ts[kept] = times[i] as number;
      v[kept] = Math.round(value * scale);
      kept++;
    } else if (Number.isNaN(value)) {
      unknownStates++;
    } else {
      implausible++;
      lowest = Math.min(lowest, raw);
      highest = Math.max(highest, raw);
    }
  }
  const findings: TrendFinding[] = [];
  if (implausible > 0) {
    const evidence = lowest === highest ? `all ${lowest}` : `from ${lowest} to ${highest} in the file's unit`;
    findings.push(makeFinding("implausible-value", { count: implausible, point: point.name, evidence }));
  }
  if (unknownStates > 0) {
    const names = (point.stateNames ?? []).filter((name) => stateAsNumber(name) === null);
    const evidence =
      names.length > 0 ? `states that are neither on nor off: ${names.join(", ")}` : "numbers other than 0 and 1";
    findings.push(makeFinding("value-missing", { count: unknownStates, point: point.name, evidence }));
  }
  return {
    status: "ok",
    ts: ts.subarray(0, kept),
    v: v.subarray(0, kept),
    decimals,
    implausible,
    unknownStates,
    findings,
  };
}

/** States as 0 and 1, NaN for other words and other numbers. */
function statesAsNumbers({
  kind,
  stateNames,
  values,
}: Pick<TrendPoint, "kind" | "stateNames" | "values">): Float64Array {
  if (kind === "numeric") return values.map((value) => (value === 0 || value === 1 ? value : Number.NaN));
  const numbers = (stateNames ?? []).map((name) => stateAsNumber(name) ?? Number.NaN);
  return values.map((value) => numbers[value] ?? Number.NaN);
}

function doesNotFit(name: string, kind: PointKind, unit: FileUnit | null): ConversionVerdict {
  const needs: Record<StoredUnit, string> = {
    degC: "a temperature (°F, °C or K)",
    m3ps: "a flow (cfm, m³/h, m³/s or L/s)",
    percent: "a percentage",
    percentRH: "a relative humidity (%RH or %)",
    state: "a state",
    kW: "a power (kW or W)",
    kWh: "the energy of each interval (kWh)",
    W: "a power (W or kW)",
  };
  const has = unit === null ? "no unit that fits" : `the unit ${unit}`;
  return {
    status: "unit-does-not-fit",
    kind,
    unit,
    sentence: `${name} has ${has}, but a point of kind "${kind}" needs ${needs[STORED_UNIT[kind]]}. Choose another kind, or say the unit.`,
  };
}
