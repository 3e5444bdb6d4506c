import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { findBuilding } from "@/db/queries/buildings";
import { listPoints } from "@/db/queries/points";
import { createBuilding } from "@/lib/services/buildings/save";
import { type FileImport, importTrendFile } from "@/lib/services/trend-imports/import-file";
import type { ZoneAnalysis } from "@/lib/services/zone-analysis/analyse-zone";
import { readBuildingAnalysis } from "@/lib/services/zone-analysis/read";
import { addZone } from "@/lib/services/zones/save";
import { asOf } from "@/lib/trends/as-of";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { m3psFromCfm } from "@/lib/units/airflow";
import { fahrenheitFromCelsius } from "@/lib/units/temperature";
import { buildingInputOf } from "@/test/factories/building";
import figures from "@/test/fixtures/trends/real-set-figures.json";
import { testContext } from "@/test/support/database";
import { hasRealPointExports } from "@/test/support/real-point-exports";

const FOLDER = fileURLToPath(new URL("../../../../shared/data/bas-point-exports/", import.meta.url));
const ZONES = ["VAV-1", "VAV-2", "VAV-5", "VAV-10"] as const;
type ZoneCode = (typeof ZONES)[number];

/** Occupied means of all rows in °F, as the README of the set states them. */
const README_MEAN_F = { "VAV-1": 73.819, "VAV-2": 72.909, "VAV-5": 72.825, "VAV-10": 74.039 };
/** Points by the names of the files, with what the fixture's script calls them. */
const COUNTED = [
  ["zone-air-temp", "air"],
  ["occupancy", "occ"],
  ["cooling-setpoint", "csp"],
  ["heating-setpoint", "hsp"],
  ["airflow", "flow"],
  ["damper-position", "damper"],
  ["reheat-valve", "valve"],
] as const;

describe.skipIf(!hasRealPointExports)("the real point exports, brought in file by file", () => {
  const ctx = testContext();
  const rule = { acceptProposals: true, answers: {} };
  const reports = new Map<string, FileImport>();
  const zoneIds = new Map<ZoneCode, number>();
  const analyses = new Map<ZoneCode, ZoneAnalysis>();
  let buildingId = 0;

  beforeAll(async () => {
    buildingId = createBuilding(ctx, buildingInputOf());
    for (const code of ZONES) {
      // The two boxes whose minimum the fixture's script knows; the others have none that could be told.
      const minimumCfm = { "VAV-5": 130, "VAV-10": 180, "VAV-1": null, "VAV-2": null }[code];
      const minimumAirflowM3ps = minimumCfm === null ? null : m3psFromCfm(minimumCfm);
      zoneIds.set(code, addZone(ctx, buildingId, { code, minimumAirflowM3ps }));
    }
    // Air handler S-7 is another part of the set: its outdoor air would make bins that the script has not.
    for (const name of readdirSync(FOLDER).filter((each) => each.startsWith("VAV") && each.endsWith(".csv"))) {
      const file = { name, bytes: new Uint8Array(readFileSync(FOLDER + name)) };
      reports.set(name, await importTrendFile(ctx, buildingId, file, rule));
    }
    const building = findBuilding(ctx.db, buildingId);
    if (!building) throw new Error("the building is gone");
    const { zones } = await readBuildingAnalysis(ctx, building, 13);
    for (const code of ZONES) {
      const analysis = zones.find((each) => each.zoneId === zoneIds.get(code));
      if (analysis) analyses.set(code, analysis);
    }
  }, 60_000);

  it("places every point that is kept by its name, and says why the others are left out", () => {
    const rest = [...reports].filter(([, { outcome }]) => outcome !== "imported");
    expect(Object.fromEntries(rest.map(([name, { outcome }]) => [name, outcome]))).toEqual({
      "VAV-1_RAD-O.csv": "asked",
      "VAV-2_RAD-O.csv": "asked",
      "VAV-5_RAD-O.csv": "asked",
      "VAV-10_RAD-O.csv": "asked",
      // No sensor: every row holds -250.
      "VAV-1_DA-T.csv": "refused",
      "VAV-2_DA-T.csv": "refused",
      "VAV-10-DA-T.csv": "refused",
    });
    expect(reports.size - rest.length).toBe(33);
    expect(reports.get("VAV-1_RAD-O.csv")?.leftOut[0]?.reason).toContain("radiator");
  });

  it("accounts for every row", () => {
    for (const [name, { rows }] of reports) {
      if (!rows) continue;
      const { rowsInFile, ...fates } = rows;
      const sum = Object.values(fates).reduce((total, each) => total + each, 0);
      expect(sum, name).toBe(rowsInFile);
      const lines = readFileSync(FOLDER + name, "utf8")
        .split(/\r?\n/)
        .slice(1)
        .filter((line) => line !== "");
      expect(rowsInFile, name).toBe(lines.length);
    }
  });

  it.each(ZONES)("%s: samples and span as counted by the independent script", async (code) => {
    const wanted = figures.zones[code];
    const points = listPoints(ctx.db, buildingId).filter((point) => point.zoneId === zoneIds.get(code));
    for (const [kind, key] of COUNTED) {
      const point = points.find((each) => each.kind === kind);
      const [extent] = await ctx.trends.extent([point?.id ?? 0]);
      const report = [...reports.values()].find(({ mapped }) =>
        mapped.some((each) => each.name === point?.externalName),
      );
      const { rows } = report ?? {};
      // The script counts rows; rows that repeat an instant are one sample, those without a plausible value none.
      const dropped = (rows?.ignored ?? 0) + (rows?.rejected ?? 0) + (rows?.heldBack ?? 0);
      expect((extent?.count ?? 0) + dropped, `${code} ${kind}`).toBeGreaterThanOrEqual(
        wanted.samples[key] - leftOut(report),
      );
      expect(extent?.count ?? 0, `${code} ${kind}`).toBeLessThanOrEqual(wanted.samples[key]);
      if (kind === "zone-air-temp") {
        expect(extent).toEqual({ firstTs: wanted.firstUtcSeconds, lastTs: wanted.lastUtcSeconds, count: 8640 });
      }
    }
  });

  it.each(ZONES)("%s: occupied mean, degree-hours and states agree with the independent script", (code) => {
    const wanted = figures.zones[code];
    const exposure = analyses.get(code)?.exposure;
    expect(exposure?.occupiedHours).toBe(wanted.occupiedHours);
    const meanC = exposure?.occupiedZoneAirTempC?.mean ?? 0;
    // Stored to 0.001 K.
    expect(Math.abs(meanC - wanted.occupiedMeanC)).toBeLessThan(5e-4);
    const states = exposure?.byState;
    if (!states) throw new Error("no states");
    const degreeHours = Object.values(states).reduce((sum, each) => sum + each.overcoolingKh, 0);
    expect(Math.abs(degreeHours - wanted.degreeHoursBelow23)).toBeLessThan(0.1);
    if ("stateIntervals" in wanted)
      for (const [state, intervals] of Object.entries(wanted.stateIntervals))
        expect(states[state as "cooling"].hours, state).toBe(intervals / 4);
    else expect(states.undetermined.hours).toBe(wanted.occupiedHours);
  });

  it.each(ZONES)("%s: the rows of the store have the occupied mean that the set states", async (code) => {
    const points = listPoints(ctx.db, buildingId).filter((point) => point.zoneId === zoneIds.get(code));
    const read = async (kind: string): Promise<TrendSlice> => {
      const id = points.find((each) => each.kind === kind)?.id ?? 0;
      for await (const slice of ctx.trends.read([id], 0, 4e9)) return slice;
      throw new Error(kind);
    };
    const [air, occupancy] = [await read("zone-air-temp"), await read("occupancy")];
    const occupied = asOf(occupancy, air.ts, 400 * 86_400);
    const tempsC = [...air.v].flatMap((value, i) => (occupied[i] === 1 ? [value / 10 ** air.decimals] : []));
    expect(tempsC).toHaveLength(3144);
    const meanF = fahrenheitFromCelsius(tempsC.reduce((sum, each) => sum + each, 0) / tempsC.length);
    // Half the last printed digit, and half of the stored 0.001 K.
    expect(Math.abs(meanF - README_MEAN_F[code])).toBeLessThan(0.0005 + 0.0009);
  });

  it("changes nothing when a file is brought in once more", async () => {
    const name = "VAV-5_ZN-T.csv";
    const file = { name, bytes: new Uint8Array(readFileSync(FOLDER + name)) };
    expect((await importTrendFile(ctx, buildingId, file, rule)).outcome).toBe("unchanged");
  });
});

/** Values that the limits of a kind left out. */
function leftOut(report: FileImport | undefined): number {
  return (report?.findings ?? [])
    .filter(({ code }) => code === "implausible-value" || code === "sentinel-value")
    .reduce((sum, { count }) => sum + (count ?? 0), 0);
}
