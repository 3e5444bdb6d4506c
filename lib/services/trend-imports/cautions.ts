import { createHash } from "node:crypto";
import type { FileUnit, TrendPointSummary } from "@/lib/importers/trend-csv/trend-file";
import type { PointKind } from "@/lib/trends/point-kind";
import { celsiusFromFahrenheit, celsiusFromKelvin } from "@/lib/units/temperature";
import type { MappingLine } from "./mapping-lines";
import type { PointChoice } from "./run-input";

/** Something about a mapping that is odd enough to be looked at, and may be right. */
export type Caution = { key: string; point: string; sentence: string };

/**
 * Where the middle of a point's values should lie [°C]: zone air 10 to 40, setpoints 15 to 30; and how far apart zone
 * air and its setpoint may be [K]. Common practice, no source.
 */
const USUAL: Partial<Record<PointKind, { low: number; high: number; words: string }>> = {
  "zone-air-temp": { low: 10, high: 40, words: "zone air is usually 10 to 40 °C" },
  "cooling-setpoint": { low: 15, high: 30, words: "setpoints are usually 15 to 30 °C" },
  "heating-setpoint": { low: 15, high: 30, words: "setpoints are usually 15 to 30 °C" },
};
const MOST_APART_K = 5;

type Series = { at: Map<string, number>; values: number[] };

/**
 * Looks at the preview values of points as they are to be mapped: their middle, and how far zone air and setpoint of
 * one zone are apart. What the inspection has no values of is not judged.
 */
export function cautionsOf(
  lines: readonly MappingLine[],
  choices: Readonly<Record<string, PointChoice>>,
  zoneCodes: ReadonlyMap<number, string>,
): Caution[] {
  const cautions: Caution[] = [];
  const air = new Map<number, { name: string; series: Series }>();
  const setpoints: { name: string; kind: PointKind; zoneId: number; series: Series }[] = [];
  for (const { name, summary } of lines) {
    const choice = choices[name];
    if (!choice || choice.skip) continue;
    const usual = USUAL[choice.kind];
    const series = usual ? previewC(summary, choice.unit ?? null) : null;
    if (!usual || !series || series.values.length === 0) continue;
    const middle = median(series.values);
    if (middle < usual.low || middle > usual.high)
      cautions.push({
        key: `range:${name}`,
        point: name,
        sentence: `${name} lies around ${middle.toFixed(1)} °C; ${usual.words}. Is it the right kind and unit?`,
      });
    else if (choice.zoneId !== null && choice.kind === "zone-air-temp") air.set(choice.zoneId, { name, series });
    else if (choice.zoneId !== null) setpoints.push({ name, kind: choice.kind, zoneId: choice.zoneId, series });
  }
  for (const { name, kind, zoneId, series } of setpoints) {
    const zoneAir = air.get(zoneId);
    const apart = zoneAir ? apartK(zoneAir.series, series) : null;
    if (!zoneAir || apart === null || apart < MOST_APART_K) continue;
    cautions.push({
      key: `apart:${name}`,
      point: name,
      sentence: `${name} is ${apart.toFixed(1)} K from ${zoneAir.name}, the air of zone ${zoneCodes.get(zoneId) ?? zoneId}; a ${kind.replace("-", " ")} is usually within ${MOST_APART_K} K. Do both belong to this zone?`,
    });
  }
  return cautions;
}

/** A mark of a set of cautions: other cautions have another one, so that only what was seen is let pass. */
export function markOf(cautions: readonly Caution[]): string {
  if (cautions.length === 0) return "";
  return createHash("sha256")
    .update(JSON.stringify(cautions.map((each) => each.sentence)))
    .digest("hex")
    .slice(0, 16);
}

const TO_C: Partial<Record<FileUnit, (value: number) => number>> = {
  degF: celsiusFromFahrenheit,
  degC: (value) => value,
  kelvin: celsiusFromKelvin,
};

/**
 * The values that an inspection shows of a point, in °C by its unit or the one chosen: the preview, or their mean while
 * the instants are not known. Null when the unit is no temperature.
 */
function previewC(summary: TrendPointSummary, chosen: string | null): Series | null {
  const { unit, first, last, firstUtc, lastUtc, spot, sum, readings } = summary;
  const convert = TO_C[(unit ?? chosen ?? "ppm") as FileUnit];
  if (!convert) return null;
  const shown = [{ utc: firstUtc, value: first }, ...(spot ?? []), { utc: lastUtc, value: last }];
  const numbers = shown.flatMap(({ utc, value }) =>
    typeof value === "number" ? [{ utc: utc ?? "", value: convert(value) }] : [],
  );
  if (numbers.length === 0 && sum !== undefined && readings > 0)
    return { at: new Map(), values: [convert(sum / readings)] };
  return {
    at: new Map(numbers.map(({ utc, value }) => [utc, value])),
    values: numbers.map(({ value }) => value),
  };
}

/** Median distance [K]: of values of the same instants where there are three or more, else between the medians. */
function apartK(air: Series, setpoint: Series): number | null {
  const paired = [...air.at].flatMap(([utc, value]) => {
    const other = setpoint.at.get(utc);
    return other === undefined ? [] : Math.abs(value - other);
  });
  return paired.length >= 3 ? median(paired) : Math.abs(median(air.values) - median(setpoint.values));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] as number)) / 2;
}
