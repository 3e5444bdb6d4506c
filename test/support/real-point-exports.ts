import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { dayNumber } from "@/lib/time/civil-date";
import type { PointSeries, Sampling } from "@/lib/trends/samples";

const FOLDER = fileURLToPath(new URL("../../../shared/data/bas-point-exports/", import.meta.url));

/** The real point exports are read where they lie beside the repository; without them their tests are skipped by name. */
export const hasRealPointExports = existsSync(FOLDER);

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A minimal reader for tests only: naive stamps are UTC-5 (CDT), named ones CST or CDT, states 0 or 1. */
export function readRealPoint(
  name: string,
  sampling: Sampling,
  options: { convert?: (value: number) => number; decimals?: number } = {},
): PointSeries {
  const { convert = (value) => value, decimals = 1 } = options;
  const rows = readFileSync(`${FOLDER}${name}.csv`, "utf8")
    .split(/\r?\n/)
    .slice(1)
    .filter((line) => line !== "")
    .map((line): [number, number] => {
      const [stamp = "", text = ""] = line.split(",");
      return [utcSeconds(stamp), stateOrNumber(text.trim())];
    })
    .sort(([a], [b]) => a - b);
  const scale = 10 ** decimals;
  return {
    sampling,
    samples: {
      ts: Float64Array.from(rows, ([ts]) => ts),
      v: Int32Array.from(rows, ([, value]) => Math.round(convert(value) * scale)),
      decimals,
    },
  };
}

function stateOrNumber(text: string): number {
  if (text === "Occ") return 1;
  if (text === "Unocc") return 0;
  const value = Number(text);
  if (Number.isNaN(value)) throw new Error(`not a number: ${text}`);
  return value;
}

function utcSeconds(stamp: string): number {
  const named = /^(\d+)-(\w{3})-(\d\d) (\d+):(\d\d):(\d\d) ([AP])M C([DS])T$/.exec(stamp);
  if (named) {
    const [, day, month, year, hour, minute, second, half, season] = named;
    const hours = (Number(hour) % 12) + (half === "P" ? 12 : 0) + (season === "D" ? 5 : 6);
    const days = dayNumber(2000 + Number(year), MONTHS.indexOf(month ?? "") + 1, Number(day));
    return days * 86400 + hours * 3600 + Number(minute) * 60 + Number(second);
  }
  const naive = /^(\d+)\/(\d+)\/(\d{4}) (\d+):(\d\d)$/.exec(stamp);
  if (!naive) throw new Error(`not a time stamp: ${stamp}`);
  const [, month, day, year, hour, minute] = naive;
  return dayNumber(Number(year), Number(month), Number(day)) * 86400 + (Number(hour) + 5) * 3600 + Number(minute) * 60;
}
