import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { candidateOf, chooseModel } from "@/lib/energy-model/change-point/choose-model";
import { type EnergyReadings, fitModel } from "@/lib/energy-model/change-point/fit-model";
import { celsiusFromFahrenheit } from "@/lib/units/temperature";

const FOLDER = fileURLToPath(new URL("../../../../../shared/data/meter-with-weather/", import.meta.url));

/** `start,value` rows as UTC seconds and numbers; the end mark of a file is `nan`. */
function rows(name: string): [number, number][] {
  const text = gunzipSync(readFileSync(`${FOLDER}${name}.csv.gz`)).toString();
  return text
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line): [number, number] => {
      const [start = "", value = ""] = line.split(",");
      return [Date.parse(start) / 1000, Number(value)];
    });
}

/** Readings of the year from a day on, each with the mean temperature of its interval. */
function yearFrom(name: string, firstDay: string, toKwh: (value: number, days: number) => number): EnergyReadings {
  const [from, to] = [0, 365].map((days) => Date.parse(`${firstDay}T00:00:00-06:00`) / 1000 + days * 86_400);
  const temps = rows("il-tempF");
  let next = 0;
  const meter = rows(`il-electricity-cdd-hdd-${name}`);
  const [outdoorC, energyKwh]: [number[], number[]] = [[], []];
  for (const [i, [start, value]] of meter.entries()) {
    const end = meter[i + 1]?.[0];
    if (end === undefined || Number.isNaN(value) || start < (from as number) || end > (to as number)) continue;
    while (next < temps.length && (temps[next]?.[0] ?? end) < start) next++;
    const within: [number, number][] = [];
    for (; next < temps.length && (temps[next]?.[0] ?? end) < end; next++) within.push(temps[next] as [number, number]);
    outdoorC.push(celsiusFromFahrenheit(within.reduce((sum, [, tempF]) => sum + tempF, 0) / within.length));
    energyKwh.push(toKwh(value, (end - start) / 86_400));
  }
  return { outdoorC: Float64Array.from(outdoorC), energyKwh: Float64Array.from(energyKwh) };
}

function fivePoint(readings: EnergyReadings) {
  const model = fitModel("5P", readings);
  if (model?.kind !== "5P") throw new Error("no 5P");
  return { ...candidateOf(model, readings, "day"), model };
}

/**
 * A meter made from a real year of temperatures: base 2,000, heating and cooling 4,000 kWh a year each, from 60 and 65 °F,
 * and a tenth less in the year after the break. The load of a day was made from the degrees of its hours, and its noise
 * grows with it; a mean day between 60 and 65 °F has hours of either, which the model by day cannot see. Slopes carry over,
 * change points only about: within 1.2 K for cooling, not at all for heating. kWh a day and K from the year's own degrees
 * by the hour: heating 4,000 / 3,542 K·d of 15.6 °C, cooling 4,000 / 942 K·d of 18.3 °C (sums of the temperature file).
 */
describe.skipIf(!existsSync(FOLDER))("a meter with known parameters (meter-with-weather)", () => {
  const before = fivePoint(yearFrom("daily", "2015-12-26", (value) => value));
  const after = fivePoint(yearFrom("daily", "2017-01-05", (value) => value));
  const degreeDays = (sign: 1 | -1, baseF: number): number =>
    rows("il-tempF")
      .filter(([at]) => at >= Date.parse("2015-12-26T06:00Z") / 1000 && at < Date.parse("2016-12-25T06:00Z") / 1000)
      .reduce((sum, [, tempF]) => sum + Math.max(0, sign * (tempF - baseF)) / 1.8 / 24, 0);

  it("gives back the planted slopes within a tenth", () => {
    expect(before.model.coolingSlope / (4000 / degreeDays(1, 65))).toBeGreaterThan(0.9);
    expect(before.model.coolingSlope / (4000 / degreeDays(1, 65))).toBeLessThan(1.1);
    expect(before.model.heatingSlope / (4000 / degreeDays(-1, 60))).toBeGreaterThan(0.9);
    expect(before.model.heatingSlope / (4000 / degreeDays(-1, 60))).toBeLessThan(1.1);
  });

  it("gives back the cooling change point by day and by hour", () => {
    const planted = celsiusFromFahrenheit(65);
    expect(Math.abs(before.model.coolingChangeC - planted)).toBeLessThan(1.2);
    const hourly = fivePoint(yearFrom("hourly", "2015-12-26", (value) => value));
    expect(Math.abs(hourly.model.coolingChangeC - planted)).toBeLessThan(0.6);
  });

  it("sees the tenth that the year after uses less", () => {
    const expected = 0.9 * before.model.coolingSlope;
    const error = Math.hypot(
      after.errors?.standardErrors.coolingSlope ?? 0,
      0.9 * (before.errors?.standardErrors.coolingSlope ?? 0),
    );
    expect(Math.abs(after.model.coolingSlope - expected)).toBeLessThan(2 * error);
  });

  it("refuses the noisy days as a baseline, and says that it is the scatter", () => {
    const choice = chooseModel(
      yearFrom("daily", "2015-12-26", (value) => value),
      "day",
    );
    expect(choice.status).toBe("refused");
    expect(choice.candidates[0]?.model.kind).toBe("5P");
    expect(choice.candidates[0]?.faults.map((each) => each.code)).toEqual(["cv-rmse-high"]);
  });

  it("takes the same load by bills, where the scatter averages out", () => {
    const choice = chooseModel(
      yearFrom("billing_monthly", "2015-12-21", (value, days) => value / days),
      "bill",
    );
    expect(choice.status).toBe("ok");
    expect(choice.status === "ok" && choice.chosen.goodness.cvRmse).toBeLessThan(0.1);
  });
});
