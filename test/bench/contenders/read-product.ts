import { openTrendStore } from "@/db/trends/store";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { airOf, degreeHours, reportMoments, setpointOf } from "../data/degree-hours";
import { medianMs } from "../stopwatch";
import { contend, timed } from "./contend";

export type ReadInput = { store: string; database: string; csv: string; zones: number; firstTs: number };
export type ReadOutcome = {
  ms: number;
  peakMb: number;
  cpuMs: number;
  /** The very first read of the process. */
  coldZoneMs: number;
  zoneMs: number;
  allMs: number;
  asOfMs: number;
  latestMs: number;
  loopMs: number;
  answers: { zone: number; all: number; asOf: number; latest: number };
};

const FROM = 0;
const TO = 4_000_000_000;

/** The questions of the pages, put to the trend store. */
await contend<ReadInput>(async ({ store, zones, firstTs }) => {
  const trends = openTrendStore(store);
  const zoneYear = async (zone: number): Promise<[TrendSlice, TrendSlice]> => {
    const read: TrendSlice[] = [];
    for await (const slice of trends.read([airOf(zone), setpointOf(zone)], FROM, TO)) read.push(slice);
    return read as [TrendSlice, TrendSlice];
  };
  const answers = { zone: 0, all: 0, asOf: 0, latest: 0 };
  const oneZone = async () => {
    answers.zone = degreeHours(...(await zoneYear(0)));
  };
  const coldZoneMs = await timed(oneZone);
  // A server that has been up for a while has its code compiled: some sixty of these reads.
  for (let i = 0; i < 150; i++) await oneZone();
  const zoneMs = await medianMs(100, oneZone);
  const ready = await zoneYear(0);
  const loopMs = await medianMs(200, () => degreeHours(...ready));
  const allMs = await medianMs(7, async () => {
    answers.all = 0;
    for (let zone = 0; zone < zones; zone++) answers.all += degreeHours(...(await zoneYear(zone)));
  });
  const queries = reportMoments(zones, firstTs).flatMap(({ zone, ts }) => [
    { series: airOf(zone), ts },
    { series: setpointOf(zone), ts },
  ]);
  const asOfMs = await medianMs(5, async () => {
    answers.asOf = sum(await trends.asOf(queries));
  });
  const points = Array.from({ length: zones * 3 }, (_, i) => i + 1);
  const latestMs = await medianMs(50, async () => {
    answers.latest = sum(await trends.latest(points));
  });
  trends.close();
  return { ms: zoneMs + allMs + asOfMs + latestMs, coldZoneMs, zoneMs, allMs, asOfMs, latestMs, loopMs, answers };
});

function sum(readings: readonly ({ value: number } | null)[]): number {
  return readings.reduce((total, reading) => total + (reading?.value ?? 0), 0);
}
