import { beforeAll, describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";

import { PLANTED_CAUSES } from "@/db/seed/planted-causes";
import { seedDemoBuilding } from "@/db/seed/seed";
import { STUCK_SENSOR } from "@/db/seed/trend-defects";
import {
  type BuildingDataQuality,
  readBuildingDataQuality,
  readZoneDataQuality,
  type ZoneDataQuality,
} from "@/lib/services/data-quality/read";
import { readZonesOverview } from "@/lib/services/zones/overview";
import type { PointKind } from "@/lib/trends/point-kind";
import { consequenceWords } from "@/lib/trends/quality/consequence-words";
import { isQualityFinding, qualityFindingWords } from "@/lib/trends/quality/findings";
import { quantityWords } from "@/lib/trends/quantity-words";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { testContext } from "@/test/support/database";

const ctx = testContext();
let buildingId = 0;
let seeded: BuildingDataQuality;
let spoilt: BuildingDataQuality;

/** Defects that the demo has not, put into zones that were clean. */
const SPOILT = {
  "1-02": "clock-change-not-followed",
  "1-04": "clock-off",
  "1-08": "unit-switched",
  "1-12": "clock-change-hour-missing",
  "2-05": "values-unlikely",
  "2-11": "trend-short",
} as const;

/** Clocks of America/New_York in the record: back on 2 November 2025, forward on 8 March 2026. */
const BACK = Date.UTC(2025, 10, 2, 6) / 1000;
const FORWARD = Date.UTC(2026, 2, 8, 7) / 1000;

beforeAll(async () => {
  ({ buildingId } = await seedDemoBuilding({ db: ctx.db, trends: ctx.trends }));
  seeded = await readBuildingDataQuality(ctx, buildingId);
  const rewrite = async (code: string, kind: PointKind, change: (slice: TrendSlice) => TrendSlice): Promise<void> => {
    const zoneId = seeded.zones.find(({ zone }) => zone.code === code)?.zone.id;
    const point = listPoints(ctx.db, buildingId).find((each) => each.zoneId === zoneId && each.kind === kind);
    for await (const slice of ctx.trends.read([point?.id ?? 0], 0, 4e9)) {
      const changed = change({ ...slice, ts: slice.ts.slice(), v: slice.v.slice() });
      await ctx.trends.remove(slice.series);
      await ctx.trends.write([changed], 99);
    }
  };
  const keep = (slice: TrendSlice, wanted: (ts: number) => boolean): TrendSlice => ({
    ...slice,
    ts: slice.ts.filter(wanted),
    v: slice.v.filter((_, i) => wanted(slice.ts[i] as number)),
  });
  await rewrite("1-02", "airflow", (slice) => ({
    ...slice,
    ts: slice.ts.map((ts) => (ts >= FORWARD ? ts + 3600 : ts)),
  }));
  await rewrite("1-04", "airflow", (slice) => ({ ...slice, ts: slice.ts.map((ts) => ts - 3600) }));
  const july = Date.UTC(2026, 6, 1, 4) / 1000;
  await rewrite("1-08", "zone-air-temp", (slice) => ({
    ...slice,
    v: slice.v.map((v, i) => ((slice.ts[i] as number) >= july ? Math.round((v - 32_000) / 1.8) : v)),
  }));
  await rewrite("1-12", "zone-air-temp", (slice) => keep(slice, (ts) => ts < BACK || ts >= BACK + 3600));
  await rewrite("2-05", "damper-position", (slice) => ({
    ...slice,
    v: slice.v.map((v, i) => (i % 500 === 0 ? 1200 : v)),
  }));
  await rewrite("2-11", "cooling-setpoint", (slice) => keep(slice, (ts) => ts >= july + 60 * 86_400));
  spoilt = await readBuildingDataQuality(ctx, buildingId);
}, 120_000);

const zoneOf = (quality: BuildingDataQuality, code: string): ZoneDataQuality => {
  const found = quality.zones.find(({ zone }) => zone.code === code);
  if (!found) throw new Error(`no zone ${code}`);
  return found;
};
const codesOf = (quality: BuildingDataQuality, code: string): string[] =>
  zoneOf(quality, code).problems.map(({ finding }) => finding.code);

describe("the data quality of the demo building", () => {
  it("finds the sensor that stood still, where and for how long", () => {
    const problem = zoneOf(seeded, STUCK_SENSOR.zoneCode).problems.find(
      ({ finding }) => finding.code === "sensor-stuck",
    );
    expect(problem?.finding.evidence).toMatchObject({ point: "zone-air-temp", compared: true, times: 1 });
    const { fromUtcSeconds, toUtcSeconds } = problem?.finding.evidence ?? {};
    // To a sample on either side, which may happen to show the same value.
    expect(Math.abs(Number(fromUtcSeconds) - STUCK_SENSOR.from)).toBeLessThanOrEqual(900);
    expect(Math.abs(Number(toUtcSeconds) - STUCK_SENSOR.to)).toBeLessThanOrEqual(900);
    expect(problem?.consequences).toEqual([]);
  });

  it("finds the controllers that were away, and the server's stop once for the building", () => {
    const gap = (code: string) =>
      zoneOf(seeded, code).problems.find(({ finding }) => finding.code === "samples-missing");
    expect(gap("1-11")).toMatchObject({ severity: "caution", finding: { evidence: { hours: 78, scope: "zone" } } });
    expect(gap("3-04")).toMatchObject({ severity: "note", finding: { evidence: { hours: 23 } } });
    expect(gap("1-11")?.finding.evidence.points).toHaveLength(5);
    const stops = seeded.findings.filter(({ code }) => code === "samples-missing");
    expect(stops).toHaveLength(1);
    expect(stops[0]?.evidence).toMatchObject({ hours: 11.5, scope: "building" });
  });

  it.each(PLANTED_CAUSES.filter(({ missingTrend }) => missingTrend))(
    "says that $zoneCode has no verdict for want of its $missingTrend, as the diagnosis does",
    async ({ zoneCode, missingTrend }) => {
      const { diagnosis } =
        (await readZonesOverview(ctx, buildingId)).zones.find(({ zone }) => zone.code === zoneCode) ?? {};
      expect(diagnosis?.verdict).toBe("undetermined");
      const [first] = zoneOf(seeded, zoneCode).problems;
      expect(first).toMatchObject({
        severity: "disqualifies",
        finding: { code: "trend-missing", evidence: { point: missingTrend } },
      });
      expect(first?.consequences.map(({ kind }) => kind)).toEqual(["rules", "verdict", "hours-split"]);
    },
  );

  it.each(PLANTED_CAUSES.filter(({ cause }) => cause === "biased-sensor"))(
    "says that nothing is proposed for $zoneCode until its sensor is seen to",
    ({ zoneCode }) => {
      const bias = zoneOf(seeded, zoneCode).problems.find(({ finding }) => finding.code === "sensor-bias");
      expect(bias?.consequences).toEqual([{ kind: "levers" }]);
    },
  );

  it("raises no alarm in the zones whose records are clean", () => {
    const planted = new Set([STUCK_SENSOR.zoneCode, "1-11", "3-04"]);
    for (const { zoneCode, cause, missingTrend } of PLANTED_CAUSES)
      if (missingTrend || cause === "biased-sensor") planted.add(zoneCode);
    const clean = seeded.zones.filter(({ zone }) => !planted.has(zone.code));
    expect(clean).toHaveLength(28);
    const alarms = clean.flatMap(({ zone, problems }) => problems.map(({ finding }) => `${zone.code} ${finding.code}`));
    expect(alarms).toEqual([]);
  });

  it.each(Object.entries(SPOILT))("finds what is planted in %s besides: %s, and only there", (code, wanted) => {
    expect(codesOf(spoilt, code)).toContain(wanted);
    const elsewhere = spoilt.zones.filter(
      ({ zone, problems }) => problems.some(({ finding }) => finding.code === wanted) && !(zone.code in SPOILT),
    );
    expect(elsewhere.map(({ zone }) => zone.code)).toEqual([]);
  });

  it("names the change, the direction and the size of what was planted", () => {
    const evidence = (code: keyof typeof SPOILT) =>
      zoneOf(spoilt, code).problems.find(({ finding }) => finding.code === SPOILT[code])?.finding.evidence;
    expect(evidence("1-02")).toMatchObject({ atUtcSeconds: FORWARD, minutes: 60 });
    expect(evidence("1-04")).toMatchObject({ minutes: -60 });
    expect(evidence("1-08")).toMatchObject({ to: "read-as-fahrenheit", times: 1 });
    expect(evidence("1-12")).toMatchObject({ atUtcSeconds: BACK, pass: "second", points: ["zone-air-temp"] });
    expect(evidence("2-05")).toMatchObject({ point: "damper-position", highest: 120 });
    expect(Math.round(Number(evidence("2-11")?.coveredDays))).toBe(32);
  });

  it("says what each problem stops, in sentences without holes", () => {
    const words = quantityWords("F", "America/New_York");
    for (const { problems } of [...seeded.zones, ...spoilt.zones]) {
      for (const { finding, consequences } of problems) {
        const stops = consequenceWords(finding, consequences);
        expect(stops).toMatch(/^[A-Z].*\.$/);
        expect(stops.startsWith("Disqualifies nothing: "), finding.code).toBe(consequences.length === 0);
        if (!isQualityFinding(finding)) continue;
        const { what, action } = qualityFindingWords(finding, words);
        for (const text of [what, action]) expect(text, finding.code).not.toMatch(/undefined|unknown|NaN|null/);
      }
    }
  });

  it("keeps the calendar of a zone to its record, and its gaps longest first", async () => {
    const detail = await readZoneDataQuality(ctx, buildingId, zoneOf(spoilt, "1-11").zone.id);
    expect(detail.dayCount).toBe(365);
    const air = detail.days.find(({ kind }) => kind === "zone-air-temp");
    const lost = [...(air?.shares ?? [])].flatMap((share, k) => (share === 0 ? [k] : []));
    // 14 and 15 July 2026, the whole days of 13 July 08:00 to 16 July 14:00: the 286th of the year is 14 July.
    expect(lost).toEqual([286, 287]);
    expect(detail.gaps[0]).toMatchObject({
      fromUtcSeconds: Date.UTC(2026, 6, 13, 12) / 1000,
      toUtcSeconds: Date.UTC(2026, 6, 16, 18) / 1000,
      hours: 78,
    });
    expect(detail.gaps[0]?.kinds).toHaveLength(5);
  });

  it("works the records out again only when something they rest on has changed", async () => {
    const computedAt = () => ctx.results.stamp(buildingId, "data-quality")?.workedOutAtMs;
    const later = { ...ctx, now: ctx.now + 60_000 };
    expect(await readBuildingDataQuality(later, buildingId)).toEqual(spoilt);
    expect(computedAt()).toBe(ctx.now);
    const [point] = listPoints(ctx.db, buildingId);
    const sample = { series: point?.id ?? 0, ts: Float64Array.of(BACK + 7), v: Int32Array.of(1), decimals: 3 };
    await ctx.trends.write([sample], 100);
    await readBuildingDataQuality(later, buildingId);
    expect(computedAt()).toBe(later.now);
  });
});
