import { describe, expect, it } from "vitest";
import { occupiedMask } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";
import { asOf } from "@/lib/trends/as-of";
import { estimateMinimumAirflow } from "@/lib/trends/estimate-minimum-airflow";
import { zoneExposure } from "@/lib/trends/exposure";
import { gridOver } from "@/lib/trends/grid";
import { zoneStates } from "@/lib/trends/state";
import { zoneGrids } from "@/lib/trends/zone-grids";
import { cfmFromM3ps, m3psFromCfm } from "@/lib/units/airflow";
import { celsiusFromFahrenheit } from "@/lib/units/temperature";
import figures from "../../fixtures/trends/real-set-figures.json";
import { hasRealPointExports, readRealPoint } from "../../support/real-point-exports";

/** Facts of the set's own README (computed there from the files). */
const README = {
  "VAV-1": { meanF: 73.819, window: [151, 150, 0, null] },
  "VAV-2": { meanF: 72.909, window: [148, 148, 0, null] },
  "VAV-5": { meanF: 72.825, window: [227, 0, 0, 217] },
  "VAV-10": { meanF: 74.039, window: [215, 0, 0, 0] },
} as const;

const FILES = {
  "VAV-1": {
    air: "VAV-1_ZN-T",
    occ: "VAV-1_OCC-O",
    csp: "VAV-1_ACTCLGSP",
    hsp: "VAV-1_ACTHTGSP",
    flow: "VAV-1_SUPFLOW",
    flowSp: "VAV-1_SUPFLOSP",
    damper: "VAV-1_DPR-O",
    valve: "VAV-1_HTG-O",
  },
  "VAV-2": {
    air: "VAV-2_ZN-T",
    occ: "VAV-2_OCC-C",
    csp: "VAV-2_ACTCLGSP",
    hsp: "VAV-2_ACTHTGSP",
    flow: "VAV-2_SUPFLOW",
    flowSp: "VAV-2_SUPFLOSP",
    damper: "VAV-2_DPR-O",
    valve: "VAV-2_HTG-O",
  },
  "VAV-5": {
    air: "VAV-5_ZN-T",
    occ: "VAV-5-OCC-O",
    csp: "VAV-5-ACTCLGSP",
    hsp: "VAV-5-ACTHTGSP",
    flow: "VAV-5-SUPFLOW",
    flowSp: "VAV-5-SUPFLOSP",
    damper: "VAV-5_DPR-O",
    valve: "VAV-5_HTG-O",
  },
  "VAV-10": {
    air: "VAV-10_ZN-T",
    occ: "VAV-10-0CC-O",
    csp: "VAV-10-ACTCLGSP",
    hsp: "VAV-10-ACTHTGSP",
    flow: "VAV-10-SUPFLOW",
    flowSp: "VAV-10-SUPFLOSP",
    damper: "VAV-10_DPR-O",
    valve: "VAV-10_HTG-O",
  },
} as const;

type ZoneName = keyof typeof FILES;
const ZONES = Object.keys(FILES) as ZoneName[];
const LONG_AGO = 400 * 86400;

function onGrid(zone: ZoneName) {
  const files = FILES[zone];
  const temp = { convert: celsiusFromFahrenheit, decimals: 5 };
  const flow = { convert: m3psFromCfm, decimals: 7 };
  const air = readRealPoint(files.air, "interval", temp);
  const first = air.samples.ts[0] as number;
  const last = air.samples.ts.at(-1) as number;
  const grid = gridOver({ fromUtcSeconds: first, toUtcSeconds: last + 300 });
  const scheduleMask = occupiedMask(grid, { weekdays: {}, holidays: [] }, zoneTable("America/Chicago"));
  return zoneGrids(
    { grid, scheduleMask, outdoorAirTempC: null, supplyAirTempC: null, relativeHumidityPct: null },
    {
      "zone-air-temp": air,
      occupancy: readRealPoint(files.occ, "change-of-value", { decimals: 0 }),
      "cooling-setpoint": readRealPoint(files.csp, "change-of-value", temp),
      "heating-setpoint": readRealPoint(files.hsp, "change-of-value", temp),
      airflow: readRealPoint(files.flow, "interval", flow),
      "airflow-setpoint": readRealPoint(files.flowSp, "interval", flow),
      "damper-position": readRealPoint(files.damper, "interval"),
      "reheat-valve": readRealPoint(files.valve, "interval"),
    },
  );
}

describe.skipIf(!hasRealPointExports)("real point exports", () => {
  it.each(ZONES)("%s: occupied rows, their mean and the setpoint window as the set states them", (zone) => {
    const files = FILES[zone];
    const air = readRealPoint(files.air, "interval").samples;
    const read = (name: string): (number | null)[] =>
      asOf(readRealPoint(name, "change-of-value").samples, air.ts, LONG_AGO);
    const occupied = read(files.occ);
    const valueF = (i: number): number => (air.v[i] as number) / 10;
    const rows = [...air.ts.keys()].filter((i) => occupied[i] === 1);
    expect(air.ts).toHaveLength(8640);
    expect(rows).toHaveLength(3144);
    const meanF = rows.reduce((sum, i) => sum + valueF(i), 0) / rows.length;
    expect(Math.abs(meanF - README[zone].meanF)).toBeLessThanOrEqual(0.0005);

    const [csp, hsp] = [files.csp, files.hsp].map((name) => readRealPoint(name, "change-of-value").samples);
    const from = Math.max(csp?.ts[0] as number, hsp?.ts[0] as number);
    const to = Math.min(csp?.ts.at(-1) as number, hsp?.ts.at(-1) as number);
    const cooling = read(files.csp);
    const heating = read(files.hsp);
    const inside = rows.filter((i) => (air.ts[i] as number) >= from && (air.ts[i] as number) <= to);
    const [count, above, below, farBelow] = README[zone].window;
    expect(inside).toHaveLength(count);
    expect(inside.filter((i) => valueF(i) > (cooling[i] as number))).toHaveLength(above);
    expect(inside.filter((i) => valueF(i) < (heating[i] as number))).toHaveLength(below);
    if (farBelow !== null) expect(inside.filter((i) => valueF(i) < (cooling[i] as number) - 2)).toHaveLength(farBelow);
  });

  it.each(ZONES)("%s: grid figures agree with the independent script", (zone) => {
    const wanted = figures.zones[zone];
    const { grids, occupiedSource } = onGrid(zone);
    expect(occupiedSource).toBe("occupancy-trend");
    const minimumCfm = "minimumCfm" in wanted ? wanted.minimumCfm : null;
    const limits = {
      minimumAirflowM3ps: minimumCfm === null ? null : m3psFromCfm(minimumCfm),
      designAirflowM3ps: null,
    };
    const states = zoneStates(grids, limits);
    const exposure = zoneExposure({
      zoneId: 1,
      grids,
      states,
      targetZoneAirTempC: figures.targetC,
      seasonThresholdC: 13,
      occupiedSource,
    });
    expect(exposure.occupiedHours).toBe(wanted.occupiedHours);
    expect(Math.abs((exposure.occupiedZoneAirTempC?.mean ?? 0) - wanted.occupiedMeanC)).toBeLessThan(1e-4);
    const degreeHours = Object.values(exposure.byState).reduce((sum, each) => sum + each.overcoolingKh, 0);
    expect(Math.abs(degreeHours - wanted.degreeHoursBelow23)).toBeLessThan(0.01);
    const short = exposure.findings.find((each) => each.code === "setpoint-record-short");
    expect(short?.evidence.setpointHours).toBe(wanted.setpointHours);
    if (!("stateIntervals" in wanted)) {
      expect(exposure.byState.undetermined.hours).toBe(wanted.occupiedHours);
      return;
    }
    for (const [state, intervals] of Object.entries(wanted.stateIntervals)) {
      expect(exposure.byState[state as "cooling"].hours, state).toBe(intervals / 4);
    }
  });

  it.each([
    ["VAV-5", 130],
    ["VAV-10", 180],
  ] as const)("%s: reads its minimum of %d cfm off the airflow setpoint", (zone, cfm) => {
    const found = estimateMinimumAirflow(onGrid(zone).grids);
    if (found.status !== "ok") throw new Error(found.status);
    expect(found.origin).toBe("airflow-setpoint-trend");
    expect(cfmFromM3ps(found.minimumAirflowM3ps)).toBeCloseTo(cfm, 1);
  });

  it.each(["VAV-1", "VAV-2"] as const)(
    "%s: does not take a box that is always at full airflow for one at minimum",
    (zone) => {
      expect(estimateMinimumAirflow(onGrid(zone).grids).status).toBe("not-estimable");
    },
  );
});
