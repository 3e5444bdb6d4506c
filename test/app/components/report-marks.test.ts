import { expect, it } from "vitest";
import { reportMarks } from "@/app/_components/charts/report-marks";

const HOUR = 3600;
const series = {
  timeZone: "UTC",
  from: 0,
  to: 12 * HOUR,
  zoneAir: [
    { t: HOUR, v: 21 },
    { t: 2 * HOUR, v: 22 },
    { t: 8 * HOUR, v: 25 },
  ],
};
const at = (...times: number[]) =>
  reportMarks({ ...series, reports: times.map((t) => ({ t, vote: -2 })) }, 2 * HOUR).map(({ airTempC }) => airTempC);

it("puts a report on the line that is drawn between the samples about it", () => {
  expect(at(HOUR, 1.25 * HOUR, 2 * HOUR)).toEqual([21, 21.25, 22]);
});

it("takes the nearest sample at the end of a line, and none within a gap or far from any", () => {
  expect(at(0.5 * HOUR, 2.5 * HOUR, 7.5 * HOUR, 8.5 * HOUR)).toEqual([21, 22, 25, 25]);
  expect(at(5 * HOUR, 10 * HOUR)).toEqual([null, null]);
  expect(reportMarks({ ...series, zoneAir: [], reports: [{ t: 0, vote: 1 }] }, HOUR)).toEqual([
    { t: 0, vote: 1, airTempC: null },
  ]);
});
