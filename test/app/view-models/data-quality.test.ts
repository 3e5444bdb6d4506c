import { describe, expect, it } from "vitest";
import { calendarBlocks, coverageTone, toneRuns } from "@/app/_components/charts/coverage-runs";
import {
  buildingFindingLines,
  dataQualityLede,
  findingWords,
  problemTitle,
  zoneQualityLines,
} from "@/app/buildings/[buildingId]/data-quality/view-model";
import {
  calendarLabel,
  gapLines,
  poorDays,
  problemLines,
  zoneQualityLede,
} from "@/app/buildings/[buildingId]/zones/[zoneId]/data-quality/view-model";
import { readBuildingDataQuality, readZoneDataQuality } from "@/lib/services/data-quality/read";
import { dayNumber } from "@/lib/time/civil-date";
import { quantityWords } from "@/lib/trends/quantity-words";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";
import { refusalOf } from "@/test/support/refusal";

const SHOWN = { temperatureUnit: "F", timeZone: "America/Chicago" } as const;

describe("the data quality page of a building", () => {
  it("has a sentence and no rows for a building without zones, and for zones without any trend", async () => {
    const { ctx, buildingId } = smallOffice();
    const bare = await readBuildingDataQuality(ctx, buildingId);
    expect(bare.record).toBeNull();
    expect(dataQualityLede(bare, SHOWN)).toContain("No zone air temperature is recorded yet");
    expect(dataQualityLede({ ...bare, zones: [] }, SHOWN)).toContain("How complete");
    expect(zoneQualityLines({ zones: [] })).toEqual([]);
    // Each zone says itself that it has no zone air, and that it has no verdict for it.
    expect(bare.zones.map(({ problems }) => problems.map(({ finding }) => finding.code))).toEqual([
      ["zone-air-missing"],
      ["zone-air-missing"],
    ]);
    expect(bare.zones[0]?.problems[0]?.severity).toBe("disqualifies");
  });

  it("puts the gravest zone first, with the shares of its key points", async () => {
    const office = smallOffice();
    await bringTrends(office);
    const quality = await readBuildingDataQuality(office.ctx, office.buildingId);
    const lines = zoneQualityLines(quality);
    expect(lines.map(({ code, severity }) => [code, severity])).toEqual([
      ["2-14", "disqualifies"],
      ["2-15", "disqualifies"],
    ]);
    // Nobody entered the minimum airflow, and the trend does not show it: the diagnosis is undetermined for it.
    const [worst] = quality.zones[0]?.problems ?? [];
    expect(worst?.finding.code).toBe("minimum-airflow-unknown");
    expect(worst?.consequences.map(({ kind }) => kind)).toContain("verdict");
    expect(lines[1]?.cover).toEqual({
      "zone-air-temp": "no trend",
      "cooling-setpoint": "no trend",
      airflow: "no trend",
      "reheat-valve": "no trend",
    });
    expect(lines[0]?.cover["zone-air-temp"]).toBe("100.0");
    expect(dataQualityLede(quality, SHOWN)).toMatch(/^2 zones, recorded .*: in 2 a fault of the data stops/);
    expect(buildingFindingLines(quality, SHOWN)).toEqual([]);
  });

  it("refuses strangers, and a zone of another building", async () => {
    const { ctx, buildingId } = smallOffice();
    const stranger = { ...ctx, actor: { kind: "anonymous" as const } };
    expect((await refusalOf(() => readBuildingDataQuality(stranger, buildingId))).code).toBe("unauthenticated");
    expect((await refusalOf(() => readZoneDataQuality(stranger, buildingId, 1))).code).toBe("unauthenticated");
    expect((await refusalOf(() => readZoneDataQuality(ctx, buildingId, 999))).code).toBe("not-found");
  });

  it("names a problem by its point, and finds the words of every kind of finding", () => {
    const title = (code: string, evidence: Record<string, string | string[]>) =>
      problemTitle({ code, severity: "note", evidence });
    expect(title("trend-short", { point: "cooling-setpoint" })).toBe("trend short: cooling setpoint");
    expect(title("samples-missing", { points: ["airflow", "zone-air-temp"] })).toBe("samples missing: 2 points");
    expect(title("samples-missing", { points: ["airflow"] })).toBe("samples missing: airflow");
    const words = quantityWords("C", "UTC");
    for (const code of ["trend-missing", "no-cooling-season", "record-without-hours"])
      expect(findingWords({ code, severity: "note", evidence: {} }, words).what).not.toBe("");
  });
});

describe("the data quality page of a zone", () => {
  it("says that a complete record has only what the rules lack, with what they cannot judge", async () => {
    const office = smallOffice();
    await bringTrends(office);
    const detail = await readZoneDataQuality(office.ctx, office.buildingId, office.zoneId);
    expect(
      detail.days
        .map(({ kind }) => kind)
        .slice()
        .sort(),
    ).toEqual(["airflow", "cooling-setpoint", "reheat-valve", "zone-air-temp"]);
    expect(zoneQualityLede(detail)).toMatch(/of which 1 stops the verdict or the cost; 100\.0 % of its zone air/);
    const lines = problemLines(detail, SHOWN);
    const damper = lines.find(({ sentence }) => String(sentence).includes("damper position"));
    expect(damper).toMatchObject({
      severity: "caution",
      stops: "Cannot be judged: airflow above command, minimum airflow overcooling.",
    });
    expect(gapLines(detail, SHOWN)).toEqual({ lines: [], more: 0 });
    expect(poorDays(detail).rows).toEqual([]);
    expect(calendarLabel(detail)).toContain("zone air 0");
  });

  it("merges poor days that are alike, and never rounds a share up to all", () => {
    const day = (shares: number[]) => ({
      pointId: 1,
      kind: "airflow" as const,
      name: "x",
      sampling: "interval" as const,
      shares,
    });
    const { rows, completeDays } = poorDays({
      firstDay: dayNumber(2026, 2, 27),
      dayCount: 5,
      days: [day([1, 0, 0, 0.96, 0.5]), day([1, 1, 1, 1, 0.999])],
    });
    expect(completeDays).toBe(2);
    expect(rows.map(({ key, days, shares }) => ({ key, days, shares }))).toEqual([
      { key: 1, days: "28 Feb 2026 to 1 Mar 2026", shares: ["0", "100"] },
      { key: 4, days: "3 Mar 2026", shares: ["50", "99"] },
    ]);
  });

  it("lists the longest gaps with their points and counts the rest", () => {
    const gaps = Array.from({ length: 25 }, (_, k) => ({
      fromUtcSeconds: 86_400 * k,
      toUtcSeconds: 86_400 * k + 3600 * (25 - k),
      hours: 25 - k,
      kinds: k === 0 ? (["airflow", "zone-air-temp"] as const).slice() : ["cooling-setpoint" as const],
      sampling: k === 1 ? ("change-of-value" as const) : ("interval" as const),
    }));
    const { lines, more } = gapLines({ gaps }, SHOWN);
    expect(lines).toHaveLength(20);
    expect(more).toBe(5);
    expect(lines[0]).toMatchObject({
      points: "airflow, zone air",
      hours: "25.0",
      fate: "left out",
      from: "31 Dec 1969, 18:00 CST",
    });
    expect(lines[1]?.fate).toContain("carried");
  });
});

describe("the calendar", () => {
  it("tells four tones apart at 95 %, 50 % and nothing", () => {
    expect([1, 0.95, 0.949, 0.5, 0.499, 0.01, 0].map(coverageTone)).toEqual([
      "complete",
      "complete",
      "most",
      "most",
      "little",
      "little",
      "none",
    ]);
    expect(toneRuns([1, 1, 0, 0, 0, 1], 1, 6)).toEqual([
      { from: 0, days: 1, tone: "complete" },
      { from: 1, days: 3, tone: "none" },
      { from: 4, days: 1, tone: "complete" },
    ]);
  });

  it("cuts a record into quarters of the calendar that hold each day once", () => {
    const first = dayNumber(2025, 11, 20);
    const blocks = calendarBlocks(first, 200);
    expect(blocks.map(({ from, to, before }) => [from, to, before])).toEqual([
      [0, 42, 50],
      [42, 132, 0],
      [132, 200, 0],
    ]);
    expect(blocks[0]?.months).toEqual([
      { name: "Oct 2025", at: 0 },
      { name: "Nov", at: 31 },
      { name: "Dec", at: 61 },
    ]);
    expect(calendarBlocks(first, 0)).toEqual([]);
  });
});
