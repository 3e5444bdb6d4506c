import { seededRandom } from "@/lib/statistics/random";
import type { TrendSlice } from "@/lib/trends/trend-store";

export type SyntheticYear = { zones: number; days: number; seed: number; startTs?: number };

const STEP = 900;
/** 2023-01-01T00:00:00Z. */
const START = 1_672_531_200;

/**
 * Trends of an invented office as a control system keeps them: per zone the air temperature to 0.1 °C every quarter
 * hour with drift and outages, the airflow, and a cooling setpoint by change of value at odd seconds. Three series a
 * zone, numbered from 1; three decimals (airflow five), as the importers store them.
 */
export function* syntheticYear({ zones, days, seed, startTs = START }: SyntheticYear): Generator<TrendSlice> {
  for (let zone = 0; zone < zones; zone++) {
    const random = seededRandom(seed + zone);
    yield zoneAirTemp(zone * 3 + 1, days, startTs, random);
    yield airflow(zone * 3 + 2, days, startTs, random);
    yield coolingSetpoint(zone * 3 + 3, days, startTs, random);
  }
}

function zoneAirTemp(series: number, days: number, startTs: number, random: () => number): TrendSlice {
  const rows: [number, number][] = [];
  let tempC = 22.5;
  let outageUntil = 0;
  for (let i = 0; i < (days * 86_400) / STEP; i++) {
    const ts = startTs + i * STEP;
    const hour = (ts / 3600) % 24;
    const pulledTo = hour > 7 && hour < 18 ? 21.8 : 25;
    tempC += (pulledTo - tempC) * 0.03 + (random() - 0.5) * 0.15;
    if (random() < 0.0005) outageUntil = ts + random() * 20_000;
    if (ts >= outageUntil) rows.push([ts, Math.round(tempC * 10) * 100]);
  }
  return slice(series, rows, 3);
}

function airflow(series: number, days: number, startTs: number, random: () => number): TrendSlice {
  const rows: [number, number][] = [];
  let flow = 120;
  for (let i = 0; i < (days * 86_400) / STEP; i++) {
    const ts = startTs + i * STEP;
    const hour = (ts / 3600) % 24;
    const wanted = hour > 7 && hour < 18 ? 120 + 60 * Math.sin((Math.PI * (hour - 7)) / 11) : 0;
    flow = wanted === 0 ? 0 : Math.round(0.6 * flow + 0.4 * wanted + (random() - 0.5) * 6);
    rows.push([ts, flow * 100]);
  }
  return slice(series, rows, 5);
}

function coolingSetpoint(series: number, days: number, startTs: number, random: () => number): TrendSlice {
  const rows: [number, number][] = [];
  for (let day = 0; day < days; day++) {
    const morning = startTs + day * 86_400 + 7 * 3600;
    rows.push([morning + Math.floor(random() * 60), 23_000]);
    if (random() < 0.2)
      rows.push([morning + 7200 + Math.floor(random() * 14_400), 22_000 + Math.floor(random() * 3) * 500]);
    rows.push([morning + 39_600 + Math.floor(random() * 60), 27_000]);
  }
  return slice(series, rows, 3);
}

function slice(series: number, rows: [number, number][], decimals: number): TrendSlice {
  const ts = Float64Array.from(rows, ([time]) => time);
  const v = Int32Array.from(rows, ([, value]) => value);
  return { series, ts, v, decimals };
}
