import { describe, expect, it } from "vitest";
import { compressorRuns } from "@/lib/trends/compressor-runs";
import { coolingCalls, IDLE, IN_CYCLE } from "@/lib/trends/cooling-calls";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { dewPointC } from "@/lib/trends/dew-point";
import { reheatAirflow } from "@/lib/trends/reheat-airflow";
import { SignTally } from "@/lib/trends/seen-span";
import { zoneStates } from "@/lib/trends/state";
import { COOLING, DEADBAND, UNDETERMINED } from "@/lib/trends/state-code";
import { supplyAirReset } from "@/lib/trends/supply-air-reset";
import { jumping, jumpsOf, meter, STILL } from "../../support/made-heater";
import { cycling } from "../../support/made-unit";
import { MONDAY } from "../../support/zone-grids";
import { LIMITS, scenarioGrids } from "../../support/zone-scenario";

const grid = { startUtcSeconds: MONDAY, stepSeconds: 900, count: 12 };

describe("a single-zone unit", () => {
  it("holds its zone in the pauses of a cycle, and is idle after an hour without a run", () => {
    const stage = Float64Array.of(0, 0.4, 0, 0, 0.2, 0, 0, 0, 0, 0, 1, Number.NaN);
    expect([...coolingCalls(grid, stage)]).toEqual([
      IDLE,
      ...Array(4).fill(IN_CYCLE),
      ...Array(5).fill(IDLE),
      IN_CYCLE,
      Number.NaN,
    ]);
  });

  it("is cooling in a cycle, in the deadband when idle, and undetermined where nobody knows", () => {
    const grids = scenarioGrids(({ hour }) => ({ coolingStage: hour < 10 ? 0.5 : hour < 14 ? 0 : Number.NaN }), 1);
    const { codes } = zoneStates({ ...grids, airflowM3ps: null, reheatValvePct: null }, LIMITS);
    const at = (hour: number) => codes[hour * 4 + 1];
    expect([at(9), at(12), at(15)]).toEqual([COOLING, DEADBAND, UNDETERMINED]);
  });

  it("counts whole runs that began in the season, and none of samples too coarse to show them", () => {
    const { grids, stage } = cycling(6, () => ({}));
    const season = coolingSeasonMask(grids, 13);
    const runs = compressorRuns(stage, grids.grid, season);
    expect(runs).toMatchObject({ runs: 600, shortRuns: 600, medianMinutes: 6 });
    expect(compressorRuns(stage, grids.grid, new Uint8Array(grids.grid.count))).toBeNull();
    const coarse = {
      ts: Float64Array.from({ length: 50 }, (_, i) => MONDAY + i * 900),
      v: new Int32Array(50).fill(1),
      decimals: 0,
    };
    expect(compressorRuns({ samples: coarse, sampling: "interval" }, grids.grid, season)).toBeNull();
  });
});

describe("heaters at a thermostat", () => {
  it("are found by their own meter at the starts it shows, with the rise and the airflow before and after", () => {
    const jumps = jumpsOf(jumping(1.8, 0.1), { heaterPowerW: meter(STILL, 11) });
    expect(jumps).toMatchObject({ source: "own-readings", events: 30, answered: 30 });
    expect(jumps?.meanRiseK).toBeCloseTo(1.8, 9);
    expect(jumps?.meanAirflowBeforeM3ps).toBeCloseTo(0.25, 9);
    expect(jumps?.meanAirflowAfterM3ps).toBeCloseTo(0.35, 9);
    expect(jumps?.seen).toMatchObject({ fromHour: 11, untilHour: 12 });
  });

  it("are not looked for where the airflow is not recorded, nor among fewer than three other zones", () => {
    expect(jumpsOf({ ...jumping(1.8, 0.1), airflowM3ps: null })).toBeNull();
    const noAir = { ...STILL, zoneAirTempC: new Float64Array(STILL.grid.count).fill(Number.NaN) };
    expect(jumpsOf(jumping(1.8, 0.1), { neighbours: noAir })).toBeNull();
  });

  it("are no steady rise of half a day's sun", () => {
    const sunny = scenarioGrids(({ hour }) => ({
      zoneAirTempC: 21 + (hour - 8) * 2.2,
      airflowM3ps: 0.1 + (hour - 8) / 50,
    }));
    expect(jumpsOf(sunny)).toBeNull();
  });
});

it("the dew point is that of the tables", () => {
  // 21.1 °C at 60 % and 24 °C at 50 %, from psychrometric tables at sea level (from memory): 13.0 and 12.9 °C.
  expect(dewPointC(21.1, 60)).toBeCloseTo(13.0, 1);
  expect(dewPointC(24, 50)).toBeCloseTo(12.9, 1);
  expect(dewPointC(23, 100)).toBeCloseTo(23, 9);
});

it("supply air is taken apart by the outdoor air, and humidity counted in mild hours alone", () => {
  const grids = scenarioGrids(({ week }) => ({
    outdoorAirTempC: week < 2 ? 17 : week < 4 ? 22 : 28,
    supplyAirTempC: week < 2 ? 16 : 13,
    relativeHumidityPct: week < 1 ? 70 : 40,
  }));
  expect(supplyAirReset(grids, coolingSeasonMask(grids, 13))).toMatchObject({
    mildHours: 100,
    mildMedianC: 16,
    mildSpreadK: 0,
    hotHours: 100,
    hotMedianC: 13,
    humidityHours: 100,
    humidHours: 50,
  });
  expect(supplyAirReset({ ...grids, supplyAirTempC: null }, coolingSeasonMask(grids, 13))).toBeNull();
});

it("airflow in reheat is told by light and heavy call", () => {
  const grids = scenarioGrids(({ i }) => ({
    zoneAirTempC: 20.2,
    reheatValvePct: i % 2 === 0 ? 20 : 80,
    airflowM3ps: i % 2 === 0 ? 0.1 : 0.3,
  }));
  const found = reheatAirflow(grids, coolingSeasonMask(grids, 13));
  expect(found).toMatchObject({ lightHours: 150, heavyHours: 150 });
  expect(found.lightAirflowM3ps).toBeCloseTo(0.1, 9);
  expect(found.heavyAirflowM3ps).toBeCloseTo(0.3, 9);
});

it("a sign is dated by its first and last interval and the hours that hold most of it", () => {
  const tally = new SignTally();
  // One at 07 h, then eight from 13 to 15 h, one at 20 h of the same day.
  tally.add(28, 7);
  for (let i = 52; i < 60; i++) tally.add(i, Math.floor(i / 4));
  tally.add(80, 20);
  expect(tally.span(grid)).toEqual({
    fromUtcSeconds: MONDAY + 28 * 900,
    toUtcSeconds: MONDAY + 81 * 900,
    fromHour: 13,
    untilHour: 15,
  });
  expect(new SignTally().span(grid)).toBeNull();
});
