import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { zoneExposure } from "@/lib/trends/exposure";
import { zoneStates } from "@/lib/trends/state";
import { STATE_BY_CODE } from "@/lib/trends/state-code";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import vav from "../../check-values/trends/vav.json";
import { type Instant, makeZoneGrids } from "../../support/zone-grids";

type PartitionCheck = {
  name: string;
  inputs: { rows: [string, ...number[]][]; T_target_C: number };
  expected: {
    states: string[];
    flags: Record<string, string[]>;
    ODH_K_h: Record<string, number>;
    hours: Record<string, number>;
  };
  tolerance: { abs: number };
};

const check = vav.checks.find((each) => each.name === "vav.trend_state_partition") as unknown as PartitionCheck;
const OUR_NAME: Record<string, string> = {
  COOL: "cooling",
  DEADBAND_MIN: "deadband",
  REHEAT: "reheat",
  FAULT_FLOW_ABOVE_COMMAND: "fault",
  UNOCC: "unoccupied",
};

function checkGrids() {
  const { rows } = check.inputs;
  return makeZoneGrids(rows.length, ({ i }) => {
    const [, occ, zoneAir, csp, hsp, airflow, , , damper, discharge, supply, valve] = rows[i] as unknown as number[];
    return {
      occupied: occ === 1,
      zoneAirTempC: zoneAir as number,
      coolingSetpointC: csp as number,
      heatingSetpointC: hsp as number,
      airflowM3ps: airflow as number,
      damperPct: damper as number,
      dischargeAirTempC: discharge as number,
      supplyAirTempC: supply as number,
      reheatValvePct: valve as number,
    };
  });
}

describe("vav.trend_state_partition", () => {
  const grids = checkGrids();
  const states = zoneStates(grids, { minimumAirflowM3ps: 0.09, designAirflowM3ps: 0.3 });

  it("gives every interval the state of the worked table", () => {
    expect(check.inputs.rows).toHaveLength(12);
    expect([...states.codes].map((code) => STATE_BY_CODE[code])).toEqual(
      check.expected.states.map((each) => OUR_NAME[each]),
    );
  });

  it("flags the leaking valve where the table does and nowhere else", () => {
    const flagged = check.inputs.rows.filter((_, i) => states.leakingReheatValve[i] === 1).map(([time]) => time);
    expect(flagged).toEqual(Object.keys(check.expected.flags));
  });

  it("gives the hours and degree-hours of the table by state", () => {
    const exposure = zoneExposure({
      zoneId: 1,
      grids,
      states,
      targetZoneAirTempC: check.inputs.T_target_C,
      seasonThresholdC: 13,
      occupiedSource: "schedule",
    });
    for (const [name, hours] of Object.entries(check.expected.hours)) {
      const state = exposure.byState[OUR_NAME[name] as (typeof OCCUPIED_STATES)[number]];
      expect(Math.abs(state.hours - hours)).toBeLessThanOrEqual(check.tolerance.abs);
      expect(Math.abs(state.overcoolingKh - (check.expected.ODH_K_h[name] as number))).toBeLessThanOrEqual(
        check.tolerance.abs,
      );
    }
    expect(exposure.byState.undetermined.hours).toBe(0);
  });
});

describe("missing trends", () => {
  const limits = { minimumAirflowM3ps: 0.09, designAirflowM3ps: 0.3 };
  const one = (
    now: { airflow?: number; valve?: number; zoneAir?: number; csp?: number; damper?: number },
    min = limits,
  ) =>
    STATE_BY_CODE[
      zoneStates(
        makeZoneGrids(1, () => ({
          occupied: true,
          zoneAirTempC: now.zoneAir ?? 21,
          ...(now.csp === undefined ? {} : { coolingSetpointC: now.csp }),
          ...(now.airflow === undefined ? {} : { airflowM3ps: now.airflow }),
          ...(now.valve === undefined ? {} : { reheatValvePct: now.valve }),
          ...(now.damper === undefined ? {} : { damperPct: now.damper }),
        })),
        min,
      ).codes[0] as number
    ];

  it("never takes a zone without airflow for cooling", () => {
    expect(one({ valve: 0, csp: 21 })).toBe("undetermined");
    expect(one({ valve: 40, csp: 21 })).toBe("reheat");
    expect(one({ csp: 21 })).toBe("undetermined");
  });

  it("never takes a zone without a minimum airflow for cooling", () => {
    expect(
      one({ valve: 0, airflow: 0.3, csp: 21 }, { minimumAirflowM3ps: null as never, designAirflowM3ps: 0.3 }),
    ).toBe("undetermined");
  });

  it("without the valve, sees cooling only where the zone is at its cooling setpoint", () => {
    expect(one({ airflow: 0.2, csp: 21.4, zoneAir: 21 })).toBe("cooling");
    expect(one({ airflow: 0.2, csp: 21.6, zoneAir: 21 })).toBe("undetermined");
    expect(one({ airflow: 0.2 })).toBe("undetermined");
    expect(one({ airflow: 0.09, csp: 21 })).toBe("undetermined");
  });

  it("cannot call high airflow at a closed damper cooling without the setpoint", () => {
    expect(one({ airflow: 0.2, valve: 0, damper: 30 })).toBe("undetermined");
    expect(one({ airflow: 0.2, valve: 0, damper: 30, csp: 22 })).toBe("fault");
    expect(one({ airflow: 0.2, valve: 0, damper: 30, csp: 20.5 })).toBe("cooling");
  });

  it("calls an occupied interval without zone air no data, and an unoccupied one unoccupied", () => {
    expect(one({ zoneAir: Number.NaN, airflow: 0.2, valve: 0 })).toBe("no-data");
  });

  it("does not flag a leak where no air moves", () => {
    const grids = makeZoneGrids(2, ({ i }) => ({
      occupied: true,
      zoneAirTempC: 22,
      airflowM3ps: i === 0 ? 0 : 0.09,
      reheatValvePct: 0,
      dischargeAirTempC: 22,
      supplyAirTempC: 13,
    }));
    expect([...zoneStates(grids, limits).leakingReheatValve]).toEqual([0, 1]);
  });
});

describe("properties", () => {
  const maybe = (low: number, high: number) =>
    fc.oneof(
      { weight: 5, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
    );
  const interval = fc.record({
    occupied: fc.boolean(),
    zoneAirTempC: maybe(17, 27),
    coolingSetpointC: maybe(20, 25),
    airflowM3ps: maybe(0, 0.4),
    damperPct: maybe(0, 100),
    reheatValvePct: maybe(0, 100),
    outdoorAirTempC: maybe(5, 38),
  });
  const limits = { minimumAirflowM3ps: 0.1, designAirflowM3ps: 0.4 };
  const expose = (rows: readonly Instant[], targetZoneAirTempC: number) => {
    const grids = makeZoneGrids(rows.length, ({ i }) => rows[i] as (typeof rows)[number]);
    return zoneExposure({
      zoneId: 1,
      grids,
      states: zoneStates(grids, limits),
      targetZoneAirTempC,
      seasonThresholdC: 13,
      occupiedSource: "schedule",
    });
  };

  it("places every occupied interval with zone air in exactly one occupied state", () => {
    fc.assert(
      fc.property(fc.array(interval, { minLength: 1, maxLength: 80 }), (rows) => {
        const grids = makeZoneGrids(rows.length, ({ i }) => rows[i] as (typeof rows)[number]);
        const { codes } = zoneStates(grids, limits);
        rows.forEach((row, i) => {
          const state = STATE_BY_CODE[codes[i] as number] as string;
          if (!row.occupied) expect(state).toBe("unoccupied");
          else if (Number.isNaN(row.zoneAirTempC)) expect(state).toBe("no-data");
          else expect(OCCUPIED_STATES as readonly string[]).toContain(state);
        });
        const season = rows.filter(
          (row) => row.occupied && !Number.isNaN(row.zoneAirTempC) && row.outdoorAirTempC >= 13,
        );
        expect(expose(rows, 23).coolingSeasonHours).toBeCloseTo(season.length / 4, 9);
      }),
    );
  });

  it("gives degree-hours that are never negative, rise with the target, and agree with their outdoor bins", () => {
    fc.assert(
      fc.property(
        fc.array(interval, { minLength: 1, maxLength: 60 }),
        fc.double({ min: 18, max: 25, noNaN: true }),
        (rows, target) => {
          const lower = expose(rows, target);
          const higher = expose(rows, target + 0.7);
          for (const state of OCCUPIED_STATES) {
            expect(lower.byState[state].overcoolingKh).toBeGreaterThanOrEqual(0);
            expect(higher.byState[state].overcoolingKh).toBeGreaterThanOrEqual(lower.byState[state].overcoolingKh);
            expect(higher.byState[state].overcoolingKh - lower.byState[state].overcoolingKh).toBeLessThanOrEqual(
              0.7 * lower.byState[state].hours + 1e-9,
            );
            const binned = (lower.byOutdoorBin ?? []).reduce((sum, bin) => sum + bin.byState[state].overcoolingKh, 0);
            expect(binned).toBeCloseTo(lower.byState[state].overcoolingKh, 9);
          }
        },
      ),
    );
  });
});
