import { describe, expect, it } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import { zoneTable } from "@/lib/time/zone-table";
import { diagnoseZone, FAULTS, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { neighbourEvidence } from "@/lib/trends/diagnosis/neighbour-evidence";
import type { ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { estimateMinimumAirflow } from "@/lib/trends/estimate-minimum-airflow";
import { zoneExposure } from "@/lib/trends/exposure";
import { gridOver } from "@/lib/trends/grid";
import { groupOffsets } from "@/lib/trends/group-offsets";
import { learnDamperMinimum } from "@/lib/trends/learn-damper-minimum";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import type { PointKind } from "@/lib/trends/point-kind";
import { resample } from "@/lib/trends/resample";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneStates } from "@/lib/trends/state";
import type { ZoneExposure } from "@/lib/trends/zone-exposure";
import { zoneGrids } from "@/lib/trends/zone-grids";
import { zoneStatistics } from "@/lib/trends/zone-statistics";
import { hasSharedSet, readSet, seriesOf } from "@/test/support/shared-sets";
import { office, zone } from "../../overcooling/offices";

type Zone = { code: string; designAirflowM3ps: number | null; series: Partial<Record<PointKind, PointSeries>> };

/** Diagnoses of zones by their trends alone, without people or devices, as the use-case puts them together. */
function diagnoses(
  zones: readonly Zone[],
  building: { outdoor: PointSeries | null; supply: PointSeries | null; timeZone: string; alwaysOccupied?: boolean },
): Map<string, ZoneDiagnosis & { overcoolingKh: number; observed: number; exposure: ZoneExposure }> {
  const all = zones.map(({ series }) => (series["zone-air-temp"] as PointSeries).samples.ts);
  const grid = gridOver({
    fromUtcSeconds: Math.min(...all.map((ts) => ts[0] as number)),
    toUtcSeconds: Math.max(...all.map((ts) => ts.at(-1) as number)),
  });
  const weekHours = localWeekHours(grid, zoneTable(building.timeZone));
  const shared = {
    grid,
    scheduleMask: new Uint8Array(grid.count).fill(building.alwaysOccupied ? 1 : 0),
    outdoorAirTempC: building.outdoor && resample(building.outdoor, grid),
    supplyAirTempC: building.supply && resample(building.supply, grid),
    relativeHumidityPct: null,
  };
  const made = zones.map(({ code, designAirflowM3ps, series }, zoneId) => {
    const { grids, occupiedSource } = zoneGrids(shared, series);
    const estimate = estimateMinimumAirflow(grids);
    const minimumAirflowM3ps = estimate.status === "ok" ? estimate.minimumAirflowM3ps : null;
    const limits = { minimumAirflowM3ps, designAirflowM3ps };
    const damperMinimumPct = learnDamperMinimum(grids, minimumAirflowM3ps);
    const states = zoneStates(grids, limits, { damperMinimumPct });
    const of = { zoneId, grids, states, targetZoneAirTempC: 23, seasonThresholdC: 13 };
    const exposure = zoneExposure({ ...of, occupiedSource });
    const statistics = zoneStatistics({ ...of, limits, weekHours, damperMinimumPct });
    return { zoneId, code, grids, limits, exposure, statistics, floor: "", minimumAirflowM3ps };
  });
  const offsets = groupOffsets(made);
  return new Map(
    made.map(({ zoneId, code, limits, exposure, statistics }) => {
      const evidence: ZoneEvidence = {
        zoneCode: code,
        exposure,
        statistics,
        reports: [],
        deskCount: 0,
        reportYears: 0,
        neighbours: neighbourEvidence(
          zoneId,
          made.map((each) => each.statistics),
        ),
        offset: offsets.find((each) => each.zoneId === zoneId) ?? null,
        limits,
        minimumAirflowOrigin: limits.minimumAirflowM3ps === null ? null : "estimated",
        heaterCount: 0,
        heaterHoursPerYear: 0,
        heaterJumps: null,
        singleZone: false,
        airHandler: null,
      };
      const { overcoolingKh, observed } = statistics.rules;
      return [code, { ...diagnoseZone(evidence), overcoolingKh, observed, exposure }];
    }),
  );
}

const same = (value: number): number => value;

describe.skipIf(!hasSharedSet("room-trends-singapore"))("an office room that is never overcooled", () => {
  const set = () =>
    readSet("room-trends-singapore/combined_Room3.csv.gz", (stamp) =>
      // `2021-09-07 00:05 +08:00`
      Math.floor(Date.parse(stamp.replace(" ", "T").replace(" ", "")) / 1000),
    );

  it("gives no overcooling, no cause of cold and no lever", () => {
    const room = set();
    const of = (name: string, convert = same) => seriesOf(room, room.column(name), convert);
    const found = diagnoses(
      [
        {
          code: "Room 3",
          designAirflowM3ps: null,
          series: {
            "zone-air-temp": of("air_temperature"),
            "cooling-setpoint": of("temp_setpoint"),
            airflow: of("supply_air_flow", (each) => each / 3600),
            "damper-position": of("damper_position"),
            occupancy: of("occupant_presence"),
          },
        },
      ],
      { outdoor: of("dry_bulb_temp"), supply: of("supply_air_temperature"), timeZone: "Asia/Singapore" },
    ).get("Room 3");
    expect(found?.observed).toBeGreaterThan(200);
    expect(found?.overcoolingKh).toBe(0);
    expect(found?.verdict).toBe("healthy");
    expect(found?.causes).toEqual([]);

    const exposure = found?.exposure as ZoneExposure;
    const { byState, coolingSeasonHours } = exposure;
    const annual = { coolingSeasonHours, byState, extrapolatedFraction: 0, method: "season-mean" } as const;
    const room3 = { ...zone(1, {}), exposure, annual };
    const result = assessBuilding(office({ draws: 500, floorAreaM2: 140, complaint: null, zones: [room3] }));
    if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
    const cost = (id: string) => result.components.find((each) => each.id === id);
    expect(result.tier.number).toBe(2);
    for (const id of ["setpoint", "deadband"]) expect([id, cost(id)?.statedValue, cost(id)?.p90]).toEqual([id, 0, 0]);
  });
});

const ZONES = ["Cor", "Eas", "Nor", "Sou", "Wes"] as const;
const celsius = (kelvin: number): number => kelvin - 273.15;

describe.skipIf(!hasSharedSet("sim-office-5zone"))("zones of a simulated office with sound controls", () => {
  // Seconds of a generic year, taken for 2023.
  const setOf = (file: string) =>
    readSet(`sim-office-5zone/${file}`, (stamp) => Date.UTC(2023, 0, 1) / 1000 + Number(stamp));

  const expectNoFault = (found: ReturnType<typeof diagnoses>): void => {
    for (const [code, { verdict, causes, observed }] of found) {
      expect(observed, code).toBeGreaterThan(5);
      expect(verdict, code).not.toBe("fault-first");
      const faults = causes.filter((cause) => FAULTS.includes(cause.code) || cause.code === "sensor-bias");
      expect(faults, code).toEqual([]);
      expect(found.get(code)?.exposure.byState.fault.hours, code).toBe(0);
    }
  };

  // Days of winter: without the outdoor air all their occupied hours are looked at.
  it.each(["results_initialize_advance.csv.gz", "results_set_scenario.csv.gz"])("%s: no fault is seen", (file) => {
    const set = setOf(file);
    const of = (name: string, convert = same) => seriesOf(set, set.column(name), convert);
    const zones = ZONES.map((zone): Zone => {
      const csp = `hvac_oveZonSup${zone}_TZonCooSet_u`;
      return {
        code: zone,
        designAirflowM3ps: null,
        series: {
          "zone-air-temp": of(`hvac_reaZon${zone}_TZon_y`, celsius),
          "cooling-setpoint": of(csp, celsius),
          "heating-setpoint": of(`hvac_oveZonSup${zone}_TZonHeaSet_u`, celsius),
          airflow: of(`hvac_reaZon${zone}_V_flow_y`),
          "damper-position": of(`hvac_oveZonAct${zone}_yDam_u`, (each) => 100 * each),
          "reheat-valve": of(`hvac_oveZonAct${zone}_yReaHea_u`, (each) => 100 * each),
          "discharge-air-temp": of(`hvac_reaZon${zone}_TSup_y`, celsius),
          // Occupied where the cooling setpoint is that of occupied hours.
          occupancy: of(csp, (kelvin) => (kelvin < 300 ? 1 : 0)),
        },
      };
    });
    const supply = of("hvac_reaAhu_TSup_y", celsius);
    const found = diagnoses(zones, { outdoor: null, supply, timeZone: "UTC" });
    expect(found.size).toBe(5);
    expectNoFault(found);
  });

  // A day each of which only the zone air is known.
  it.each(["results_peak_cool_day.csv", "results_typical_cool_day.csv"])("%s: no fault is seen", (file) => {
    const set = setOf(file);
    const of = (name: string) => seriesOf(set, set.column(name), celsius);
    const zones = (["Cor", "Nor", "Wes"] as const).map((zone): Zone => {
      return { code: zone, designAirflowM3ps: null, series: { "zone-air-temp": of(`hvac_reaZon${zone}_TZon_y`) } };
    });
    const outdoor = of("weaSta_reaWeaTDryBul_y");
    expectNoFault(diagnoses(zones, { outdoor, supply: null, timeZone: "UTC", alwaysOccupied: true }));
  });
});
