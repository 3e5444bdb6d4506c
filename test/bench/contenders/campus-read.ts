import { listPoints } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { readZoneHistory } from "@/lib/services/zones/history";
import { readZonesOverview } from "@/lib/services/zones/overview";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { openContext } from "../data/data-folder";
import { degreeHours } from "../data/degree-hours";
import { medianMs } from "../stopwatch";
import { contend, timed } from "./contend";

export type CampusRead = {
  ms: number;
  peakMb: number;
  cpuMs: number;
  firstOverviewMs: number;
  overviewMs: number;
  historyMs: number;
  latestMs: number;
  coldDegreeHoursMs: number;
  degreeHoursMs: number;
  degreeHours: number;
  readingsRead: number;
};

/** What pages ask of building 1: the overview when nothing is kept and when it is, a zone, and all degree-hours. */
await contend<{ dataFolder: string }>(async ({ dataFolder }) => {
  const ctx = openContext(dataFolder);
  const zones = listZones(ctx.db, 1);
  const points = listPoints(ctx.db, 1);
  const idOf = (zoneId: number, kind: string) =>
    points.find((each) => each.zoneId === zoneId && each.kind === kind)?.id ?? 0;
  const pairs = zones.map((zone) => [idOf(zone.id, "zone-air-temp"), idOf(zone.id, "cooling-setpoint")] as const);
  const answer = { degreeHours: 0, readingsRead: 0 };
  const allDegreeHours = async () => {
    Object.assign(answer, { degreeHours: 0, readingsRead: 0 });
    for (const pair of pairs) {
      const read: TrendSlice[] = [];
      for await (const slice of ctx.trends.read(pair, 0, 4_000_000_000)) read.push(slice);
      answer.degreeHours += degreeHours(read[0] as TrendSlice, read[1] as TrendSlice);
      answer.readingsRead += (read[0]?.ts.length ?? 0) + (read[1]?.ts.length ?? 0);
    }
  };
  const coldDegreeHoursMs = await timed(allDegreeHours);
  const degreeHoursMs = await medianMs(3, allDegreeHours);
  const latestMs = await medianMs(5, () => ctx.trends.latest(points.map((each) => each.id)));
  const firstOverviewMs = await timed(() => readZonesOverview(ctx, 1));
  const overviewMs = await medianMs(5, () => readZonesOverview(ctx, 1));
  const historyMs = await medianMs(9, () => readZoneHistory(ctx, 1, zones[0]?.id ?? 0, {}));
  ctx.close();
  const ms = coldDegreeHoursMs + firstOverviewMs;
  return { ms, firstOverviewMs, overviewMs, historyMs, latestMs, coldDegreeHoursMs, degreeHoursMs, ...answer };
});
