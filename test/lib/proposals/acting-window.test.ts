import { describe, expect, it } from "vitest";
import { type ActingWindow, ALL_YEAR, shareOfDays } from "@/lib/proposals/acting-window";
import { LEVERS, type Lever } from "@/lib/proposals/lever";
import { actingHours } from "@/lib/proposals/live/acting-hours";
import { energySaved } from "@/lib/proposals/live/energy-saved";
import { moveOf } from "@/lib/proposals/live/felt";
import { livePicture } from "@/lib/proposals/live/live-picture";
import { statedNumbers } from "@/lib/proposals/live/shared-numbers";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import { coolingMonths, seasonCalendar } from "@/lib/proposals/season-calendar";
import { liveBuilding, liveZone, stateAt } from "@/test/factories/live-building";

const WHOLE_DAY = { fromMinute: 0, toMinute: 1440 };
const SUMMER: ActingWindow = { seasonFromMonth: 5, seasonToMonth: 9, ...WHOLE_DAY };
const REST: ActingWindow = { seasonFromMonth: 10, seasonToMonth: 4, ...WHOLE_DAY };
const MORNING: ActingWindow = { seasonFromMonth: 1, seasonToMonth: 12, fromMinute: 0, toMinute: 12 * 60 + 15 };
const AFTERNOON: ActingWindow = { seasonFromMonth: 1, seasonToMonth: 12, fromMinute: 12 * 60 + 15, toMinute: 1440 };

/**
 * A planted year: 100 h of July in the hour from 14:00 in a hot bin that the plant cools alone, and 300 h of April in the hour from
 * 8:00 in a mild bin of which it meets a fifth.
 */
const PLANTED: LiveBuilding["calendar"] = {
  binsC: [15, 30],
  cells: [
    [7, 14, 1, 100, 100],
    [4, 8, 0, 300, 60],
  ],
};

const state = (mild: number, hot: number, tempC: number) => ({
  ...stateAt(mild + hot, tempC),
  hoursByBin: [mild, hot],
});

const planted = (changes: Partial<LiveBuilding> = {}): LiveBuilding =>
  liveBuilding(
    [
      liveZone({
        states: {
          cooling: state(120, 80, 21.5),
          deadband: state(90, 20, 20.8),
          reheat: state(60, 0, 21),
          other: state(30, 0, 23),
        },
      }),
    ],
    { calendar: PLANTED, ...changes },
  );

const levers = (amounts: Partial<Record<Lever, number>>) =>
  LEVERS.flatMap((lever) => (amounts[lever] ? [{ zoneId: 1, lever, amount: amounts[lever] }] : []));

const ALL_LEVERS = levers({
  "cooling-setpoint": 1,
  "heating-setpoint": 0.5,
  "minimum-airflow": 40,
  "supply-air-temp": 1,
  schedule: 0.5,
  "personal-device": 30,
});

/** Electricity and heat by part, of the levers in a window. */
function partsIn(building: LiveBuilding, window: ActingWindow) {
  const stated = statedNumbers(building);
  const { parts } = energySaved(building, moveOf(building, ALL_LEVERS, window, stated), stated);
  return Object.entries(parts).flatMap(([name, { electricKwh, heatKwh }]) => [
    [name, electricKwh] as const,
    [`${name}, heat`, heatKwh] as const,
  ]);
}

describe("the season and hours of a proposal", () => {
  it("take of each state the hours that a planted year has in them", () => {
    const zone = (window: ActingWindow) => actingHours(planted(), window).byZone.get(1);
    expect(zone(SUMMER)?.cooling.hours).toBeCloseTo(80, 9);
    expect(zone(SUMMER)?.reheat.hours).toBe(0);
    expect(zone({ ...SUMMER, fromMinute: 0, toMinute: 14 * 60 })?.cooling.hours).toBe(0);
    // A window that ends at a quarter past two has a quarter of the hour.
    expect(zone({ ...SUMMER, fromMinute: 0, toMinute: 14 * 60 + 15 })?.cooling.hours).toBeCloseTo(20, 9);
    expect(zone(REST)?.deadband.hours).toBeCloseTo(90, 9);
  });

  it("weigh hours of cooling by what the plant meets in them", () => {
    // By hand: 80 h at all and 120 h at a fifth are 104 full hours of 200, so that summer's 80 count as 80 · 200 / 104.
    const cooling = actingHours(planted(), SUMMER).byZone.get(1)?.cooling;
    expect(cooling?.coolingHours).toBeCloseTo((80 * 200) / 104, 9);
    const picture = livePicture(planted(), levers({ "cooling-setpoint": 1 }), SUMMER);
    const setpoint = picture.parts.find(({ id }) => id === "setpoint")?.stated;
    // UA · h · K · m / COP at 0.085: 5.412 · 153.85 · 0.7987 / 3.51685.
    expect(setpoint).toBeCloseTo(5.412 * ((80 * 200) / 104) * (0.7987 / 3.51685) * 0.085, 6);
  });

  it.each([
    ["summer and the rest of the year", SUMMER, REST],
    ["mornings and afternoons", MORNING, AFTERNOON],
  ])("add up to the whole: %s", (_, one, other) => {
    const building = planted();
    const [a, b, whole] = [partsIn(building, one), partsIn(building, other), partsIn(building, ALL_YEAR)];
    for (const [k, [name, kwh]] of whole.entries()) {
      // A schedule is shorter by days, whatever the hour: both halves of the day hold all of its days.
      if (one === MORNING && name === "fan") continue;
      expect((a[k]?.[1] ?? 0) + (b[k]?.[1] ?? 0), name).toBeCloseTo(kwh, 6);
    }
    expect(whole.some(([, kwh]) => kwh > 0)).toBe(true);
  });

  it("say of a lever that acts on none of these hours that it does nothing", () => {
    const picture = livePicture(planted(), levers({ "heating-setpoint": 1 }), SUMMER);
    expect(picture.saving.stated).toBe(0);
    expect(picture.idle[0]?.reason).toMatch(/season and hours/);
  });

  it("move the zone air in their own hours only", () => {
    const { temps } = livePicture(planted(), levers({ "cooling-setpoint": 2 }), SUMMER);
    const at = (lowC: number) => temps.find((each) => each.lowC === lowC);
    const sum = (of: "hoursBefore" | "hoursAfter") => temps.reduce((total, each) => total + each[of], 0);
    expect(sum("hoursAfter")).toBeCloseTo(sum("hoursBefore"), 6);
    const gone =
      (at(21)?.hoursBefore ?? 0) +
      (at(21.5)?.hoursBefore ?? 0) -
      (at(21)?.hoursAfter ?? 0) -
      (at(21.5)?.hoursAfter ?? 0);
    expect(gone).toBeGreaterThan(0);
    expect(gone).toBeLessThanOrEqual(80 + 1e-9);
  });

  it("say what they should show by themselves, undiluted by the rest of the year", () => {
    const summer = livePicture(planted(), levers({ "cooling-setpoint": 2 }), SUMMER).whileItStands;
    // 80 of summer's 100 hours are held by the setpoint and rise by 2 K.
    expect(summer?.riseK).toBeCloseTo(1.6, 9);
    const year = livePicture(planted(), levers({ "cooling-setpoint": 2 }), ALL_YEAR).whileItStands;
    expect(year?.riseK).toBeCloseTo((2 * 200) / 400, 9);
    // By hand: 80 h at 21.5 °C come to 23.5, the target; 20 h at 20.8 stay 2.7 K below it.
    expect(summer?.degreeHoursLeft).toBeGreaterThan((20 * 2.7) / (80 * 2 + 20 * 2.7) - 0.1);
    expect(summer?.degreeHoursLeft).toBeLessThan((20 * 2.7) / (80 * 2 + 20 * 2.7) + 0.1);
    expect(summer?.coldRatio).toBeLessThan(1);
    expect(summer?.hotRatio).toBeGreaterThan(1);
  });

  it("give the season's electricity of a day while the change stands, whatever is undone later", () => {
    const kept = livePicture(planted(), ALL_LEVERS, SUMMER).electricPerDayKwh;
    const undone = livePicture(
      liveBuilding(planted().zones as never, { calendar: PLANTED }, { changeKeptFraction: 0.5 }),
      ALL_LEVERS,
      SUMMER,
    ).electricPerDayKwh;
    expect(kept?.stated).toBeGreaterThan(0);
    expect(undone?.stated).toBeCloseTo(kept?.stated ?? 0, 9);
    expect(kept?.working.result.value).toBeCloseTo(kept?.stated ?? 0, 9);
  });
});

describe("the calendar of a season", () => {
  it("lays occupied hours out by month, hour and bin, with the economizer's share", () => {
    const calendar = seasonCalendar({
      dryBulbC: [12, 15, 20, 30],
      occupied: [1, 1, 0.5, 1],
      clock: { month: Uint8Array.of(1, 4, 4, 7), hour: Uint8Array.of(8, 9, 9, 14) },
      supplyAirTempC: 13,
      returnAirTempC: 23,
      hasEconomizer: true,
    });
    expect(calendar.binsC).toEqual([15, 18, 30]);
    expect(calendar.cells).toEqual([
      [4, 9, 0, 1, 0.2],
      [4, 9, 1, 0.5, 0.35],
      [7, 14, 2, 1, 1],
    ]);
  });

  it.each([
    [[0, 0, 2, 60, 200, 220, 240, 220, 200, 70, 3, 0], 4, 10],
    [[240, 220, 180, 60, 0, 0, 0, 0, 5, 60, 180, 220], 10, 4],
    [[200, 200, 200, 200, 200, 200, 200, 200, 200, 200, 200, 200], 1, 12],
  ])("finds the months that cool, over the new year too: %j", (byMonth, fromMonth, toMonth) => {
    const cells = byMonth.map((hours, k) => [k + 1, 12, 0, hours, hours] as const);
    expect(coolingMonths({ binsC: [18], cells })).toEqual({ fromMonth, toMonth });
    expect(coolingMonths({ binsC: [], cells: [] })).toBeNull();
  });

  it("counts the days of a season that runs over the new year", () => {
    expect(shareOfDays(SUMMER) + shareOfDays(REST)).toBeCloseTo(1, 12);
    expect(365 * shareOfDays({ ...REST, seasonFromMonth: 12, seasonToMonth: 2 })).toBeCloseTo(90, 9);
  });
});
