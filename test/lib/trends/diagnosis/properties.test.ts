import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { zoneTable } from "@/lib/time/zone-table";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { airHandlerEvidence } from "@/lib/trends/diagnosis/air-handler-evidence";
import { causesByTable } from "@/lib/trends/diagnosis/decision-table";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { neighbourEvidence } from "@/lib/trends/diagnosis/neighbour-evidence";
import type { ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { groupOffsets } from "@/lib/trends/group-offsets";
import { heaterJumps } from "@/lib/trends/heater-jumps";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import type { zoneStatistics } from "@/lib/trends/zone-statistics";
import { report, scenarioEvidence, scenarioGrids } from "../../../support/zone-scenario";

type At = Parameters<typeof scenarioGrids>[0];

/** What a box may do for an hour. A fault cools a zone well below its setpoint: near it, much air is cooling. */
const HOURS: readonly ReturnType<At>[] = [
  {},
  { zoneAirTempC: 21.5, coolingSetpointC: 21.4 },
  { zoneAirTempC: 21.5, airflowM3ps: 0.1, damperPct: 30 },
  { zoneAirTempC: 21.5, airflowM3ps: 0.1, damperPct: 80 },
  { zoneAirTempC: 19.3, airflowM3ps: 0.1, damperPct: 30 },
  { zoneAirTempC: 20.1, airflowM3ps: 0.1, damperPct: 30, reheatValvePct: 40, dischargeAirTempC: 18 },
  { zoneAirTempC: 20.1, airflowM3ps: 0.13, damperPct: 30, reheatValvePct: 90, dischargeAirTempC: 24 },
  { zoneAirTempC: 19.3, airflowM3ps: 0.1, damperPct: 30, reheatValvePct: 100, dischargeAirTempC: 13.4 },
  { zoneAirTempC: 21.5, airflowM3ps: 0.25, damperPct: 30 },
  { zoneAirTempC: 21.9, airflowM3ps: 0.1, damperPct: 30, dischargeAirTempC: 18 },
  { zoneAirTempC: 24.2, airflowM3ps: 0.4, damperPct: 100 },
  { zoneAirTempC: 19.5, airflowM3ps: 0.1, damperPct: 30, outdoorAirTempC: 17 },
  { zoneAirTempC: 22.6, heatingSetpointC: 21.8, relativeHumidityPct: 70, outdoorAirTempC: 17 },
];

/** What a zone does in the five spells of its day, two hours each; mostly the same. */
const day = fc
  .tuple(fc.nat({ max: HOURS.length - 1 }), fc.nat({ max: HOURS.length - 1 }), fc.nat({ max: 5 }))
  .map(([one, other, from]) => Array.from({ length: 5 }, (_, spell) => (spell < from ? one : other)));
const gridsOf = (spells: readonly number[]): ZoneGrids =>
  scenarioGrids(({ hour }) => HOURS[spells[Math.floor((hour - 8) / 2)] ?? 0] ?? {}, 4);

const TRENDS = [
  "coolingSetpointC",
  "heatingSetpointC",
  "airflowM3ps",
  "damperPct",
  "reheatValvePct",
  "dischargeAirTempC",
  "supplyAirTempC",
  "relativeHumidityPct",
] as const satisfies readonly (keyof ZoneGrids)[];

const without = (grids: ZoneGrids, gone: readonly (typeof TRENDS)[number][]): ZoneGrids => ({
  ...grids,
  ...Object.fromEntries(gone.map((trend) => [trend, null])),
});

const HANDLER = { name: "AHU-1", zones: 8, zonesAtMinimum: ["1", "2", "3", "4", "5"], zonesShortOfAir: [] };
const votes = fc.array(
  fc.record({ desk: fc.constantFrom("A", "B", "C"), vote: fc.constantFrom(-2, 2), airC: fc.constantFrom(21.5, 23.4) }),
  { maxLength: 12 },
);

describe("missing trends", () => {
  it("never add a cause, and change the verdict only with fewer causes or to undetermined", () => {
    fc.assert(
      fc.property(day, fc.subarray([...TRENDS], { minLength: 1, maxLength: 2 }), votes, (hours, gone, voted) => {
        const more: Partial<ZoneEvidence> = {
          airHandler: HANDLER,
          reports: voted.map(({ desk, vote, airC }) => report(desk, vote, airC)),
        };
        const grids = gridsOf(hours);
        const whole = scenarioEvidence(grids, more);
        const less = scenarioEvidence(without(grids, gone), more);
        const before = causesByTable(whole).map(({ code }) => code);
        const after = causesByTable(less).map(({ code }) => code);
        for (const code of after) expect(before, `${code} without ${gone.join(", ")}`).toContain(code);
        const [was, is] = [diagnoseZone(whole).verdict, diagnoseZone(less).verdict];
        if (is !== was && is !== "undetermined") expect(after.length, `${was} to ${is}`).toBeLessThan(before.length);
      }),
      { numRuns: 250 },
    );
  });

  it("of airflow or valve leave a cold zone undetermined, never with a lever", () => {
    fc.assert(
      fc.property(day, fc.constantFrom("airflowM3ps" as const, "reheatValvePct" as const), (hours, gone) => {
        const { verdict } = diagnoseZone(scenarioEvidence(without(gridsOf(hours), [gone])));
        expect(["setpoint-first", "minimum-airflow-first", "both-minimum-first"]).not.toContain(verdict);
      }),
      { numRuns: 60 },
    );
  });

  it("of the outdoor air leave no proposal of a minimum airflow", () => {
    fc.assert(
      fc.property(day, (hours) => {
        const { verdict } = diagnoseZone(scenarioEvidence({ ...gridsOf(hours), outdoorAirTempC: null }));
        expect(["minimum-airflow-first", "both-minimum-first"]).not.toContain(verdict);
      }),
      { numRuns: 60 },
    );
  });
});

/** Verdicts of a building's zones, put together as the use-case does, by code. */
function verdictsOf(zones: readonly { code: string; zoneId: number; grids: ZoneGrids }[]): Map<string, ZoneDiagnosis> {
  const weekHours = localWeekHours((zones[0] as { grids: ZoneGrids }).grids.grid, zoneTable("UTC"));
  const grouped = zones.map(({ zoneId, grids }) => ({
    zoneId,
    floor: String(zoneId % 2),
    grids,
    minimumAirflowM3ps: 0.1,
    season: coolingSeasonMask(grids, 13),
    heaterPowerW: null,
  }));
  const offsets = new Map(groupOffsets(grouped).map((each) => [each.zoneId, each]));
  const jumps = heaterJumps(grouped, weekHours);
  const made = zones.map(({ code, zoneId, grids }) => {
    const evidence = scenarioEvidence(grids, { zoneCode: code });
    return { zoneId, evidence: { ...evidence, statistics: { ...evidence.statistics, zoneId } } };
  });
  const statistics = made.map(({ evidence }): ReturnType<typeof zoneStatistics> => evidence.statistics);
  const served = made.map(({ zoneId, evidence }) => ({
    zone: {
      ...evidence,
      neighbours: neighbourEvidence(zoneId, statistics),
      offset: offsets.get(zoneId) ?? null,
      heaterJumps: jumps.get(zoneId) ?? null,
    },
    airHandler: "AHU-1",
    ownSupplyAir: false,
  }));
  const handlers = airHandlerEvidence(served);
  return new Map(
    served.map(({ zone }) => [
      zone.zoneCode,
      diagnoseZone({ ...zone, airHandler: handlers.get(zone.zoneCode) ?? null }),
    ]),
  );
}

it("the order in which zones come changes nothing that is said of them", () => {
  const building = fc.array(day, { minLength: 5, maxLength: 7 }).chain((days) => {
    const zones = days.map((hours, k) => ({ code: `VAV-${k + 1}`, zoneId: k + 1, grids: gridsOf(hours) }));
    return fc.tuple(fc.constant(zones), fc.shuffledSubarray(zones, { minLength: zones.length }));
  });
  fc.assert(
    fc.property(building, ([zones, shuffled]) => {
      const [one, other] = [verdictsOf(zones), verdictsOf(shuffled)];
      for (const { code } of zones) expect(JSON.stringify(other.get(code))).toBe(JSON.stringify(one.get(code)));
    }),
    { numRuns: 20 },
  );
});
