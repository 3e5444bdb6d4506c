import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { median } from "@/lib/statistics/quantile";
import { zoneTable } from "@/lib/time/zone-table";
import { neighbourEvidence } from "@/lib/trends/diagnosis/neighbour-evidence";
import { downsample } from "@/lib/trends/downsample";
import { estimateMinimumAirflow } from "@/lib/trends/estimate-minimum-airflow";
import { groupOffsets } from "@/lib/trends/group-offsets";
import { learnDamperMinimum } from "@/lib/trends/learn-damper-minimum";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import { medianInPlace } from "@/lib/trends/median-in-place";
import { occupiedIntervals } from "@/lib/trends/occupied";
import { weekHourMeans } from "@/lib/trends/week-hour-means";
import { MONDAY } from "../../support/zone-grids";
import { scenarioEvidence, scenarioGrids } from "../../support/zone-scenario";

describe("occupiedIntervals", () => {
  it("takes the recorded occupancy where there is one and the schedule elsewhere", () => {
    const schedule = Uint8Array.from([0, 1, 1, 0]);
    const mixed = occupiedIntervals(schedule, Float64Array.from([1, 0, Number.NaN, Number.NaN]));
    expect([...mixed.mask]).toEqual([1, 0, 1, 0]);
    expect(mixed).toMatchObject({ source: "occupancy-trend-and-schedule", fromTrend: 2 });
    expect(occupiedIntervals(schedule, null).source).toBe("schedule");
    expect([...schedule]).toEqual([0, 1, 1, 0]);
  });
});

describe("estimateMinimumAirflow", () => {
  it("finds the level at which the zone drifts below its setpoint, through noise and starts", () => {
    const grids = scenarioGrids(({ i, hour }) =>
      hour < 9
        ? { airflowM3ps: 0.02 }
        : hour < 14
          ? { zoneAirTempC: 22, airflowM3ps: 0.12 * (1 + 0.04 * Math.sin(i)) }
          : { airflowM3ps: 0.25 + 0.1 * Math.sin(i) },
    );
    const found = estimateMinimumAirflow(grids);
    if (found.status !== "ok") throw new Error(found.status);
    expect(found.origin).toBe("estimated");
    expect(found.finding.evidence.basis).toBe("deadband-hours");
    expect(Math.abs(found.minimumAirflowM3ps - 0.12)).toBeLessThan(0.003);
  });

  it("says so when the airflow never moves", () => {
    expect(estimateMinimumAirflow(scenarioGrids(() => ({}))).status).toBe("not-estimable");
  });
});

describe("learnDamperMinimum", () => {
  it("learns a box that needs 44 % at its minimum, and keeps 35 % where nothing is to be learned", () => {
    const grids = scenarioGrids(() => ({ airflowM3ps: 0.1, damperPct: 44 }));
    expect(learnDamperMinimum(grids, 0.1)).toBe(47);
    expect(learnDamperMinimum(grids, null)).toBe(35);
    expect(
      learnDamperMinimum(
        scenarioGrids(() => ({ airflowM3ps: 0.1, damperPct: 90 })),
        0.1,
      ),
    ).toBe(35);
  });
});

describe("groupOffsets", () => {
  const zone = (zoneId: number, biasK: number, floor = "2") => {
    const grids = scenarioGrids(() => ({ zoneAirTempC: 23.2 }), 3);
    for (let i = 0; i < grids.zoneAirTempC.length; i++) {
      // A biased sensor reads the setpoint by day like all others and its bias at night.
      if (grids.occupied[i] !== 1) grids.zoneAirTempC[i] = (grids.zoneAirTempC[i] as number) + biasK;
    }
    return { zoneId, floor, grids, minimumAirflowM3ps: 0.1 };
  };

  it("shows a planted bias of one zone of a floor and none of the others", () => {
    const found = groupOffsets([zone(1, 0), zone(2, 0.2), zone(3, 1.6), zone(4, -0.1), zone(5, 0)]);
    const biased = found.find((each) => each.zoneId === 3);
    // The others stand at -0.1, 0, 0 and 0.2: their median is 0.
    expect(biased).toMatchObject({ group: "floor", neighbours: 4 });
    expect(biased?.floatOffsetK).toBeCloseTo(1.6, 9);
    expect(biased?.occupiedOffsetK).toBeCloseTo(0, 9);
    // Zone 4 itself does not count among its neighbours: 0, 0, 0.2 and 1.6 have the median 0.1.
    expect(found.find((each) => each.zoneId === 4)?.floatOffsetK).toBeCloseTo(-0.2, 9);
    for (const each of found.filter((other) => other.zoneId !== 3)) {
      expect(Math.abs(each.floatOffsetK ?? Number.NaN)).toBeLessThan(0.25);
    }
  });

  it("compares a small floor with the whole building and a lone zone with nothing", () => {
    const found = groupOffsets([zone(1, 0, "1"), zone(2, 0, "2"), zone(3, 0, "2"), zone(4, 2, "3")]);
    expect(found.every((each) => each.group === "building")).toBe(true);
    expect(found.find((each) => each.zoneId === 4)?.floatOffsetK).toBeCloseTo(2, 9);
    expect(groupOffsets([zone(1, 0)])[0]?.floatOffsetK).toBeNull();
  });

  it("does not compare zones that are being ventilated", () => {
    const zones = [1, 2, 3, 4].map((id) => zone(id, 0));
    for (const each of zones) each.grids.airflowM3ps?.fill(0.1);
    expect(groupOffsets(zones)[0]).toMatchObject({ floatOffsetK: null, floatHours: 0 });
  });
});

describe("neighbourEvidence", () => {
  it("leaves the zone itself out", () => {
    const { statistics } = scenarioEvidence(scenarioGrids(() => ({})));
    const held = { ...statistics, zoneId: 8, coolingSetbackK: 0 };
    const found = neighbourEvidence(8, [statistics, held]);
    expect(found.zones).toBe(1);
    expect(found.medianCoolingSetbackK).toBeCloseTo(3.8, 9);
  });
});

describe("weekHourMeans", () => {
  it("sorts instants by the wall clock, Monday first, and through the change of clocks", () => {
    const grid = { startUtcSeconds: MONDAY, stepSeconds: 3600, count: 168 };
    const values = Float64Array.from({ length: 168 }, (_, i) => i);
    const inUtc = weekHourMeans(values, localWeekHours(grid, zoneTable("UTC")));
    expect(inUtc[0]?.[0]).toBe(0);
    expect(inUtc[6]?.[23]).toBe(167);
    // New York is four hours behind in July: Monday 00:00 there is hour 4, and hours 0-3 belong to its Sunday.
    const there = weekHourMeans(values, localWeekHours(grid, zoneTable("America/New_York")));
    expect(there[0]?.[0]).toBe(4);
    expect(there[6]?.[20]).toBe(0);
    // Sunday 10 March 2024: no 02:00 hour in New York.
    const spring = { startUtcSeconds: 1_710_046_800, stepSeconds: 3600, count: 23 };
    const day = weekHourMeans(new Float64Array(23).fill(1), localWeekHours(spring, zoneTable("America/New_York")))[6];
    expect(day?.map((each) => each === null)).toEqual(Array.from({ length: 24 }, (_, hour) => hour === 2));
  });
});

describe("downsample", () => {
  it("keeps the lowest and highest of every bucket in order, and breaks at gaps", () => {
    const values = Float64Array.from({ length: 1000 }, (_, i) => Math.sin(i / 10));
    values[503] = 9;
    values.fill(Number.NaN, 700, 750);
    const points = downsample({ startUtcSeconds: 0, stepSeconds: 60, values }, 50);
    expect(points.length).toBeLessThanOrEqual(150);
    expect(points.some((each) => each.value === 9 && each.utcSeconds === 503 * 60)).toBe(true);
    expect(points.filter((each) => each.value === null)).toHaveLength(1);
    expect(points.every((each, i) => i === 0 || each.utcSeconds > (points[i - 1]?.utcSeconds ?? 0))).toBe(true);
  });

  it("passes a short series on as it is", () => {
    const points = downsample(
      { startUtcSeconds: 0, stepSeconds: 60, values: Float64Array.from([1, Number.NaN, 3]) },
      50,
    );
    expect(points.map((each) => each.value)).toEqual([1, null, 3]);
  });
});

describe("medianInPlace", () => {
  it("is the median of sorting, for repeated values and any length", () => {
    const values = fc.array(fc.oneof(fc.integer({ min: 0, max: 4 }), fc.double({ min: -50, max: 50, noNaN: true })), {
      minLength: 1,
      maxLength: 60,
    });
    fc.assert(
      fc.property(values, (list) => {
        expect(medianInPlace(Float64Array.from(list))).toBeCloseTo(median(list), 9);
      }),
    );
  });
});
