import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";
import { isoWeekday } from "@/lib/time/civil-date";
import { zoneTable } from "@/lib/time/zone-table";
import { GREENSBORO_C } from "../lib/overcooling/offices";
import { bytesOf } from "./trend-csv";

const FIRST = Date.UTC(2025, 0, 1, 6) / 1000;
const chicago = zoneTable("America/Chicago");
/** Planted in every working day: 40 kW, and 3 kW for each kelvin of the day's mean above 14 °C. */
export const PLANTED_METER = { baseKw: 40, slopeKwPerK: 3, changeC: 14, idleKw: 15 };

/** A year of hours of power and outdoor air by the wall clock of Chicago, with the offset in every stamp. */
export function meterYearFile(): Uint8Array {
  const random = seededRandom(3);
  const rows: string[] = [];
  for (let hour = 0; hour < 8760; hour++) {
    const at = FIRST + hour * 3600;
    const local = chicago.localFromUtc(at);
    const day = Math.floor(local / 86_400);
    const outdoorC = GREENSBORO_C[hour] as number;
    const meanC = dayMeans.get(day) ?? outdoorC;
    const works = isoWeekday(day) <= 5;
    const kw = works
      ? PLANTED_METER.baseKw +
        PLANTED_METER.slopeKwPerK * Math.max(0, meanC - PLANTED_METER.changeC) +
        2 * normalPair(random)[0]
      : PLANTED_METER.idleKw + normalPair(random)[0];
    const stamp = new Date(local * 1000).toISOString().slice(0, 19);
    const offset = (at - local) / 3600;
    rows.push(`${stamp}-0${offset}:00,${kw.toFixed(3)},${outdoorC}`);
  }
  return bytesOf(["Timestamp,Main Meter (kW),Outdoor Air Temp (°C)", ...rows]);
}

/** Mean outdoor air of the year's days by day number [°C]. */
export const dayMeans = new Map<number, number>();
{
  const sums = new Map<number, number[]>();
  for (let hour = 0; hour < 8760; hour++) {
    const day = Math.floor(chicago.localFromUtc(FIRST + hour * 3600) / 86_400);
    sums.set(day, [...(sums.get(day) ?? []), GREENSBORO_C[hour] as number]);
  }
  for (const [day, all] of sums) dayMeans.set(day, all.reduce((sum, each) => sum + each, 0) / all.length);
}
