import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { levelStates } from "@/lib/electrical/plug-log/level-states";
import { heldSeries, seriesTotals } from "@/lib/electrical/plug-log/plug-series";
import { powerLevels } from "@/lib/electrical/plug-log/power-levels";
import { levelFigures } from "@/lib/electrical/plug-log/state-figures";
import { stateRuns } from "@/lib/electrical/plug-log/state-runs";
import { seededRandom } from "@/lib/statistics/random";
import { loadCheckValues } from "@/test/support/check-values";

type Stretch = { powerW: number; seconds: number };

/** A log by the step given, each stretch at its power with a spread of so much of it. */
function logOf(stretches: readonly Stretch[], { step = 10, spread = 0, seed = 1 } = {}) {
  const random = seededRandom(seed);
  const powerW: number[] = [];
  for (const { powerW: mean, seconds } of stretches)
    for (let at = 0; at < seconds; at += step) powerW.push(mean * (1 + spread * (2 * random() - 1)));
  const ts = Float64Array.from(powerW, (_, at) => at * step);
  return heldSeries(ts, Float64Array.from(powerW));
}

function found(series: ReturnType<typeof logOf>) {
  const levels = powerLevels(series);
  return levelFigures(levels, stateRuns(series, levelStates(series, levels)));
}

const hour = 3600;

describe("levels of power", () => {
  it("are the planted ones, whatever the settings, their hours and the spread of the mains", () => {
    const setting = fc.integer({ min: 0, max: 3 });
    fc.assert(
      fc.property(
        setting,
        fc.integer({ min: 5, max: 300 }),
        fc.double({ min: 0, max: 0.04, noNaN: true }),
        (count, minutes, spread) => {
          // Each setting is at least half as strong again as the one before: heat steps and speeds are.
          const planted = [0, 20, 60, 150, 400].slice(0, count + 2);
          const series = logOf(
            planted.map((powerW) => ({ powerW, seconds: minutes * 60 })),
            { spread, seed: minutes },
          );
          const levels = powerLevels(series);
          expect(levels.map((level) => Math.round(level.hours * 60))).toEqual(planted.map(() => minutes));
          for (const [at, powerW] of planted.entries())
            expect(Math.abs((levels[at]?.powerW ?? -1) - powerW)).toBeLessThanOrEqual(0.02 * powerW);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("add up: hours to the hours logged, energy to the energy of the log, selected hours too", () => {
    const day = [0, 740, 0, 1450, 20, 1450, 20, 0, 740].map((powerW, at) => ({ powerW, seconds: 600 + 300 * at }));
    const series = logOf(day, { spread: 0.03 });
    const totals = seriesTotals(series);
    const levels = found(series);
    const sum = (key: "hours" | "energyKwh" | "selectedHours") =>
      levels.reduce((total, level) => total + level[key], 0);
    expect(sum("hours")).toBeCloseTo(totals.loggedHours, 9);
    expect(sum("selectedHours")).toBeCloseTo(totals.loggedHours, 9);
    expect(sum("energyKwh")).toBeCloseTo(totals.energyKwh, 9);
    for (const { powerW, selectedHours, dutyFraction, energyKwh, hours } of levels) {
      const paused = hours - selectedHours * dutyFraction;
      expect((powerW * (selectedHours * dutyFraction + paused)) / 1000).toBeCloseTo(energyKwh, 9);
    }
  });

  it("do not switch at noise beside the border between two of them", () => {
    const levels = [
      { powerW: 0, fromW: 0, toW: 100, hours: 1 },
      { powerW: 700, fromW: 100, toW: 1000, hours: 1 },
      { powerW: 1400, fromW: 1000, toW: Number.POSITIVE_INFINITY, hours: 1 },
    ];
    // Past the border by a tenth of the way to the next level: 1,040 W upwards, 970 W downwards.
    const powerW = [1400, 990, 1010, 975, 969, 1010, 1039, 1041, 990, 300, 95, 89, 101, 159, 161];
    const series = heldSeries(
      Float64Array.from(powerW, (_, at) => at),
      Float64Array.from(powerW),
    );
    expect([...levelStates(series, levels)]).toEqual([2, 2, 2, 2, 1, 1, 1, 2, 2, 1, 1, 0, 0, 0, 1]);
  });

  it("count a pause of half an hour to the thermostat, and a longer one to nobody's setting", () => {
    const heater = (pauseMinutes: number) =>
      found(
        logOf([0, 1400, 0, 1400, 0].map((powerW, at) => ({ powerW, seconds: at === 2 ? pauseMinutes * 60 : hour }))),
      );
    expect(heater(30).at(-1)).toMatchObject({ hours: expect.closeTo(2, 6), selectedHours: expect.closeTo(2.5, 6) });
    expect(heater(31).at(-1)).toMatchObject({ selectedHours: expect.closeTo(2, 6), dutyFraction: 1 });
    // Low heat between two times of high is a setting that somebody chose, no pause.
    const chosen = found(logOf([0, 1400, 700, 1400].map((powerW) => ({ powerW, seconds: 900 }))));
    expect(chosen.map((level) => level.selectedHours)).toEqual(
      [0.25, 0.25, 0.5].map((hours) => expect.closeTo(hours, 6)),
    );
  });

  it("are found however long the device stood by beside them", () => {
    // Four weeks on standby, twenty hours of high heat and half an hour of low.
    const powers = [0.6, 1450, 0.6, 740].map((powerW, at) => ({
      powerW,
      seconds: [300, 20, 350, 0.5].map((h) => h * hour)[at] as number,
    }));
    const levels = found(logOf(powers, { step: 60, spread: 0.01 }));
    expect(levels.map((level) => [Math.round(level.powerW / 10), level.hours])).toEqual([
      [0, 650],
      [74, 0.5],
      [145, 20],
    ]);
  });

  it("are not made of a load that wanders", () => {
    // A desktop computer between 60 and 113 W at random, as the published log of one shows: one level, not a dozen.
    const random = seededRandom(7);
    const stretches = Array.from({ length: 400 }, () => ({ powerW: 60 + 53 * random(), seconds: 60 }));
    expect(found(logOf(stretches)).filter((level) => level.hours > 0)).toHaveLength(1);
  });

  it("are none but off where nothing was drawn, and take standby for off", () => {
    expect(found(logOf([{ powerW: 0, seconds: hour }]))).toHaveLength(1);
    const levels = found(logOf([0.8, 900].map((powerW) => ({ powerW, seconds: hour }))));
    expect(levels.map((level) => [Math.round(level.powerW * 10) / 10, level.hours])).toEqual([
      [0.8, 1],
      [900, 1],
    ]);
  });
});

type SeriesInputs = { interval_min: number; P_W: number[]; on_threshold_W: number };

describe("energy of a log of quarter hours", () => {
  const { cases } = loadCheckValues<SeriesInputs>("electrical/duty-from-series");
  it.each(cases)("$name: as the reference adds it up", ({ inputs, expected, tolerance }) => {
    const powerW = Float64Array.from(inputs.P_W);
    const series = heldSeries(
      Float64Array.from(powerW, (_, at) => at * inputs.interval_min * 60),
      powerW,
    );
    const allowed = Number(tolerance.kWh);
    const energyKwh = Number(expected.kWh);
    expect(energyKwh).toBeGreaterThan(0);
    expect(Math.abs(seriesTotals(series).energyKwh - energyKwh)).toBeLessThanOrEqual(allowed);
  });
});
