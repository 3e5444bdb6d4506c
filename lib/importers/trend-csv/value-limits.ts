import type { PointKind } from "@/lib/trends/point-kind";
import { celsiusFromFahrenheit, celsiusFromKelvin } from "@/lib/units/temperature";
import { NUMBER } from "./cell-reader";
import { kindOfName } from "./kind-of-name";
import type { FileUnit } from "./trend-file";

/** Numbers that systems write for "no value": repeated digits, ends of 16-bit ranges, a sensor that is not there. */
const ALWAYS = new Set([
  -999, -9999, -99999, -999.9, -9999.9, -32768, -32767, -3276.8, 32767, 65535, 99999, 999999, 3276.7, 6553.5,
]);
const OF_TEMPERATURES = new Set([999, 9999, 999.9, 9999.9, 888.8, -888.8, -99, -99.9, -250, 327.67, 655.35, -327.68]);
const OF_OTHERS = new Set([999, 9999, 999.9, 9999.9]);

/** Smallest size among those of each kind: ordinary readings need no look at the list. */
const LEAST_OF_TEMPERATURES = Math.min(...[...ALWAYS, ...OF_TEMPERATURES].map(Math.abs));
const LEAST_OF_OTHERS = Math.min(...[...ALWAYS, ...OF_OTHERS].map(Math.abs));

const TEMPERATURES: readonly (FileUnit | null)[] = ["degF", "degC", "kelvin"];

/** Readings of a smaller size are no sentinels. */
export const leastSentinel = (unit: FileUnit | null): number =>
  TEMPERATURES.includes(unit) ? LEAST_OF_TEMPERATURES : LEAST_OF_OTHERS;

/**
 * Tells sentinels apart from readings. No temperature or percentage reaches those numbers; an airflow or a meter may,
 * so there they count only when five times larger than every other value, or negative among positive ones.
 */
export function sentinelTest(
  unit: FileUnit | null,
  values: Float64Array,
  isNumber: Uint8Array,
): (value: number) => boolean {
  const inTemperatures = TEMPERATURES.includes(unit);
  if (inTemperatures)
    return (value) => Math.abs(value) >= LEAST_OF_TEMPERATURES && (ALWAYS.has(value) || OF_TEMPERATURES.has(value));
  const isSuspect = (value: number): boolean =>
    Math.abs(value) >= LEAST_OF_OTHERS && (ALWAYS.has(value) || OF_OTHERS.has(value));
  if (unit === "percent" || unit === "percentRH") return isSuspect;
  let largest = 0;
  let lowest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (isNumber[i] !== NUMBER || isSuspect(value)) continue;
    largest = Math.max(largest, Math.abs(value));
    lowest = Math.min(lowest, value);
  }
  return (value) => isSuspect(value) && (Math.abs(value) > 5 * largest || (value < 0 && lowest >= 0));
}

/** Limits beyond which no zone air can be, in °C (the samples' rule 9: -30 to 60). */
export const ZONE_AIR_LIMITS_C = { low: -30, high: 60 };
/** Air outdoors and behind a cooling or heating coil: wider. Common practice, no source. */
const OUTDOOR_LIMITS_C = { low: -60, high: 60 };
const COIL_LIMITS_C = { low: -30, high: 90 };

/** Limits in °C for a point by what its name says it is, or null when nothing can be said. */
function plausibleAirTempC(kind: PointKind | null, skipped: boolean): { low: number; high: number } | null {
  if (skipped) return null;
  if (kind === "outdoor-air-temp") return OUTDOOR_LIMITS_C;
  if (kind === "discharge-air-temp" || kind === "supply-air-temp") return COIL_LIMITS_C;
  return ZONE_AIR_LIMITS_C;
}

/** Tells whether a temperature cannot be, by what the name says the point is; never true of other quantities. */
export function implausibleTest(name: string, unit: FileUnit | null): (value: number) => boolean {
  const toC =
    unit === "degF"
      ? celsiusFromFahrenheit
      : unit === "kelvin"
        ? celsiusFromKelvin
        : unit === "degC"
          ? (value: number) => value
          : null;
  const { kind, skip } = kindOfName(name);
  const limits = plausibleAirTempC(kind, skip);
  if (!toC || !limits) return () => false;
  return (value) => {
    const tempC = toC(value);
    return tempC < limits.low || tempC > limits.high;
  };
}
