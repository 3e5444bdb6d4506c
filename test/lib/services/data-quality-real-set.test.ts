import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { createBuilding } from "@/lib/services/buildings/save";
import {
  type BuildingDataQuality,
  readBuildingDataQuality,
  readZoneDataQuality,
} from "@/lib/services/data-quality/read";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { readZoneDays } from "@/lib/services/zones/days";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import figures from "@/test/fixtures/trends/real-set-figures.json";
import { testContext } from "@/test/support/database";
import { hasRealPointExports } from "@/test/support/real-point-exports";

const FOLDER = fileURLToPath(new URL("../../../../shared/data/bas-point-exports/", import.meta.url));
const ZONES = ["VAV-1", "VAV-2", "VAV-5", "VAV-10"] as const;

/** Damper readings outside 0 to 100 % by half a percent and more, counted in the file itself. */
function damperOutside(name: string): number {
  const rows = readFileSync(`${FOLDER}${name}`, "utf8").split(/\r?\n/).slice(1);
  return rows.filter((row) => {
    const text = row.split(",")[1]?.trim() ?? "";
    return text !== "" && (Number(text) < -0.5 || Number(text) > 100.5);
  }).length;
}

describe.skipIf(!hasRealPointExports)("the data quality of the real point exports", () => {
  const ctx = testContext();
  let buildingId = 0;
  let quality: BuildingDataQuality;

  beforeAll(async () => {
    buildingId = createBuilding(ctx, buildingInputOf());
    for (const code of ZONES) addZone(ctx, buildingId, { code });
    const wanted = (name: string): boolean =>
      name.endsWith(".csv") && (name.startsWith("VAV") || name === "S-7_FBD-SP.csv");
    for (const name of readdirSync(FOLDER).filter(wanted)) {
      const file = { name, bytes: new Uint8Array(readFileSync(FOLDER + name)) };
      await importTrendFile(ctx, buildingId, file, { acceptProposals: true, answers: {} });
    }
    quality = await readBuildingDataQuality(ctx, buildingId);
  }, 60_000);

  const zone = (code: (typeof ZONES)[number]) => {
    const found = quality.zones.find((each) => each.zone.code === code);
    if (!found) throw new Error(`no zone ${code}`);
    return found;
  };

  it.each(ZONES)("%s: finds that its setpoints cover about 2 of 30 days, and what cannot be judged for it", (code) => {
    const short = zone(code).problems.filter(({ finding }) => finding.code === "trend-short");
    const points = short.map(({ finding }) => finding.evidence.point);
    expect(points).toEqual(expect.arrayContaining(["cooling-setpoint", "heating-setpoint"]));
    for (const { finding } of short.filter(({ finding: { evidence } }) =>
      String(evidence.point).endsWith("setpoint"),
    )) {
      // The last 500 changes, and the day for which the last of them holds, to the end of the zone air.
      expect(Number(finding.evidence.coveredDays)).toBeGreaterThan(1);
      expect(Number(finding.evidence.coveredDays)).toBeLessThan(4);
      expect(Math.round(Number(finding.evidence.ofDays))).toBe(30);
    }
    const cooling = short.find(({ finding }) => finding.evidence.point === "cooling-setpoint");
    expect(cooling?.consequences[0]).toMatchObject({
      kind: "rules",
      codes: expect.arrayContaining(["setpoint-too-low", "minimum-airflow-overcooling"]),
    });
  });

  it.each([
    ["VAV-1", "VAV-1_DA-T.csv"],
    ["VAV-2", "VAV-2_DA-T.csv"],
    ["VAV-10", "VAV-10-DA-T.csv"],
  ] as const)("%s: says that nothing came from the file whose every row is -250", (code, fileName) => {
    const remark = zone(code).remarks.find((each) => each.fileName === fileName);
    expect(remark?.severity).toBe("caution");
    expect(remark?.sentence).toMatch(/^Nothing was taken from this file\. /);
    expect(zone(code).problems.map(({ finding }) => `${finding.code} ${finding.evidence.point}`)).toContain(
      "trend-missing discharge-air-temp",
    );
  });

  it("says of the empty file, which belongs to no zone, that nothing came of it", () => {
    expect(quality.remarks.map(({ fileName }) => fileName)).toContain("S-7_FBD-SP.csv");
  });

  it("accounts for every damper reading outside 0 to 100 % of the file: left out by the import, or found here", () => {
    const inFile = damperOutside("VAV-1_DPR-O.csv");
    const found = zone("VAV-1").problems.find(
      ({ finding }) => finding.code === "values-unlikely" && finding.evidence.point === "damper-position",
    );
    const leftOut = zone("VAV-1").remarks.find(({ fileName }) => fileName === "VAV-1_DPR-O.csv");
    const [, count = "0"] = /^(\d+) values/.exec(leftOut?.sentence ?? "") ?? [];
    expect(Number(count)).toBeGreaterThan(0);
    expect(Number(found?.finding.evidence.samples) + Number(count)).toBe(inFile);
  });

  it("shows days without setpoints in the calendar, and days with zone air", async () => {
    const detail = await readZoneDataQuality(ctx, buildingId, zone("VAV-5").zone.id);
    const shares = (kind: string): number[] => [...(detail.days.find((each) => each.kind === kind)?.shares ?? [])];
    // The building's record begins and ends with another zone's, some minutes off.
    expect(shares("zone-air-temp").slice(1, -1)).toEqual(new Array(29).fill(1));
    expect(shares("cooling-setpoint").filter((share) => share === 0).length).toBeGreaterThanOrEqual(26);
  });

  it.each(ZONES)(
    "%s: has days whose degree-hours and hours add up to those of the independent script",
    async (code) => {
      const days = await readZoneDays(ctx, buildingId, zone(code).zone.id);
      const wanted = figures.zones[code];
      expect(days).toHaveLength(31);
      const sum = (of: (day: (typeof days)[number]) => number): number =>
        days.reduce((total, day) => total + of(day), 0);
      expect(Math.abs(sum(({ exposure }) => exposure.overcoolingKh) - wanted.degreeHoursBelow23)).toBeLessThan(0.1);
      expect(sum(({ exposure }) => exposure.countedHours)).toBe(wanted.occupiedHours);
      // Recording begins and ends at noon: half a day has no mean, and says why.
      expect(days[0]?.zoneAir).toMatchObject({ value: null, reason: "below-coverage" });
      for (const { zoneAir, zoneAirRange, date } of days.slice(1, -1)) {
        if (zoneAir.value === null) throw new Error(`${code} has no mean on ${date}`);
        expect(zoneAir.value).toBeGreaterThanOrEqual(zoneAirRange?.lowest ?? Number.NaN);
        expect(zoneAir.value).toBeLessThanOrEqual(zoneAirRange?.highest ?? Number.NaN);
      }
    },
  );
});
