import { describe, expect, it } from "vitest";
import { weatherDifference } from "@/lib/proposals/proof/comparable-days";
import { detectability, energyProof } from "@/lib/proposals/proof/energy-proof";
import { differenceProof, overallVerdict, verdictOf } from "@/lib/proposals/proof/proof-of";
import { reportProof } from "@/lib/proposals/proof/report-proof";
import { switchbackProof } from "@/lib/proposals/proof/switchback-proof";
import { weekPairs } from "@/lib/proposals/proof/week-pairs";
import { trialCalendar, trialOrder } from "@/lib/proposals/trial-calendar";
import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";
import { evaluateFormula, workingsIn } from "../overcooling/evaluate-formula";

/** Days with outdoor air between 15 and 30 °C and a value that follows it, with noise of 0.2. */
function daysOf(seed: number, count: number, riseAt: (outdoorC: number) => number) {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const outdoorC = 15 + 15 * random();
    const [noise] = normalPair(random);
    return { outdoorC, value: 22 + 0.05 * (outdoorC - 22) + riseAt(outdoorC) + 0.2 * noise };
  });
}

describe("days of like weather", () => {
  it("recover a planted rise within a 90 % interval about nine times in ten, whatever the weather", () => {
    let held = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const before = daysOf(seed, 60, () => 0);
      const after = daysOf(seed + 1000, 40, () => 1).map((each) => each);
      const found = weatherDifference(before, after, 0.9);
      if (found.status === "ok" && found.low <= 1 && found.high >= 1) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(170);
    expect(held).toBeLessThanOrEqual(196);
  });

  it("do not take warmer weather for an effect", () => {
    const before = daysOf(5, 80, () => 0);
    const after = daysOf(6, 80, () => 0).filter((each) => each.outdoorC > 24);
    const found = weatherDifference(before, after, 0.9);
    if (found.status !== "ok") throw new Error("not comparable");
    expect(found.low).toBeLessThan(0.06);
    expect(found.high).toBeGreaterThan(-0.06);
    expect(Math.abs(found.difference)).toBeLessThan(0.15);
  });

  it("are refused where the weather does not overlap", () => {
    const cold = daysOf(7, 40, () => 0).map((each) => ({ ...each, outdoorC: each.outdoorC - 30 }));
    const found = weatherDifference(
      cold,
      daysOf(8, 40, () => 1),
      0.9,
    );
    expect(found.status).toBe("not-comparable");
    const proof = differenceProof(found, {
      id: "zone-air",
      label: "Zone air",
      unit: "°C",
      confidence: 0.9,
      meant: { sign: 1, expected: 1 },
    });
    expect(proof.verdict).toBe("too-early");
  });
});

it("an interval is read by what was meant", () => {
  expect(verdictOf(0.5, 1.5, { sign: 1, expected: 1 })).toBe("shown");
  expect(verdictOf(-1.5, -0.5, { sign: 1, expected: 1 })).toBe("worse");
  expect(verdictOf(-1.5, -0.5, { sign: -1, expected: -1 })).toBe("shown");
  expect(verdictOf(-3, 3, { sign: 1, expected: 1 })).toBe("too-early");
  expect(verdictOf(-0.2, 0.3, { sign: 1, expected: 1 })).toBe("not-shown");
});

describe("reports", () => {
  /** R: poisson.test(c(11, 3), c(800, 3011)) is the published example; here the counts speak for themselves. */
  it("that fall from 40 to 10 in equal windows are shown to fall", () => {
    const proof = reportProof("cold-reports", { events: 40, exposure: 1000 }, { events: 10, exposure: 1000 }, 0.4);
    expect(proof.verdict).toBe("shown");
    expect(proof.change).toBeCloseTo(0.25, 9);
  });

  it("of three weeks are not enough to tell, and say so", () => {
    const proof = reportProof("cold-reports", { events: 3, exposure: 300 }, { events: 1, exposure: 300 }, 0.5);
    expect(proof.verdict).toBe("too-early");
    expect(proof.sentence).toMatch(/not enough to tell/);
  });

  it("of heat that rise are worse, and never shown", () => {
    const rise = reportProof("hot-reports", { events: 5, exposure: 1000 }, { events: 25, exposure: 1000 }, 1);
    expect(rise.verdict).toBe("worse");
    const fall = reportProof("hot-reports", { events: 40, exposure: 1000 }, { events: 10, exposure: 1000 }, 1);
    expect(fall.verdict).not.toBe("shown");
    expect(overallVerdict([rise])).toBe("worse");
  });
});

const METER = { name: "main meter", href: "/energy-meter" };

/** Occupied days of a meter: 800 kWh, and 30 kWh for each kelvin above the change point, with noise of 4 %. */
function meterDays(seed: number, count: number, changeC: number) {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const outdoorC = 5 + 27 * random();
    const [noise] = normalPair(random);
    return { outdoorC, energyKwh: 800 + 30 * Math.max(0, outdoorC - changeC) + 40 * noise };
  });
}

describe("the meter", () => {
  it("shows a planted move of the change point, within its interval", () => {
    const after = meterDays(12, 150, 16);
    const planted =
      after.reduce((sum, { outdoorC }) => sum + 30 * (Math.max(0, outdoorC - 14) - Math.max(0, outdoorC - 16)), 0) /
      after.length;
    const proof = energyProof(meterDays(11, 250, 14), after, planted, METER);
    expect(proof?.verdict).toBe("shown");
    expect(proof?.low).toBeLessThan(planted);
    expect(proof?.high).toBeGreaterThan(planted);
  });

  it("has workings that a reader can follow to its change and to half of its interval", () => {
    const proof = energyProof(meterDays(11, 250, 14), meterDays(12, 150, 16), 36, METER);
    const [avoided, half] = proof?.workings ?? [];
    if (!proof || !avoided || !half) throw new Error("no working");
    expect(evaluateFormula(avoided)).toBeCloseTo(proof.change ?? 0, 9);
    expect(evaluateFormula(half)).toBeCloseTo(((proof.high ?? 0) - (proof.low ?? 0)) / 2, 6);
    for (const inside of [...workingsIn(avoided), ...workingsIn(half)]) {
      const again = evaluateFormula(inside);
      if (again !== null) expect(again, inside.formula).toBeCloseTo(inside.result.value, 6);
    }
  });

  it("does not call a change without effect a success, in at most one case of ten", () => {
    const verdicts = Array.from({ length: 40 }, (_, k) =>
      energyProof(meterDays(100 + k, 250, 14), meterDays(500 + k, 150, 14), 36, METER),
    ).map((each) => each?.verdict);
    expect(verdicts.filter((each) => each === "shown").length).toBeLessThanOrEqual(4);
    expect(verdicts.filter((each) => each === "not-shown").length).toBeGreaterThan(30);
  });

  it("says beforehand what it can show, and less with fewer days", () => {
    const before = meterDays(21, 250, 14);
    const [long, short] = [detectability(before, 150), detectability(before, 10)];
    if (long.status !== "ok" || short.status !== "ok") throw new Error("no model");
    expect(short.leastFraction).toBeGreaterThan(2 * long.leastFraction);
    expect(detectability(before.slice(0, 4), 10).status).toBe("no-model");
  });
});

describe("a switchback", () => {
  it("has one week of either setting in each pair, in an order that its seed gives again", () => {
    const order = trialOrder({ pairs: 40, seed: 7 });
    expect(order).toEqual(trialOrder({ pairs: 40, seed: 7 }));
    const first = order.filter((each, k) => k % 2 === 0 && each.setting === "proposed").length;
    expect(first).toBeGreaterThan(10);
    expect(first).toBeLessThan(30);
    for (let pair = 0; pair < 40; pair++)
      expect(new Set(order.filter((each) => each.pair === pair).map((each) => each.setting)).size).toBe(2);
  });

  it("has a calendar of whole weeks from its first day on, each with a washout day, over the end of a month", () => {
    const weeks = trialCalendar({ pairs: 2, seed: 7 }, "2026-06-22");
    expect(weeks.map(({ from, to, countsFrom }) => [from, countsFrom, to])).toEqual([
      ["2026-06-22", "2026-06-23", "2026-06-28"],
      ["2026-06-29", "2026-06-30", "2026-07-05"],
      ["2026-07-06", "2026-07-07", "2026-07-12"],
      ["2026-07-13", "2026-07-14", "2026-07-19"],
    ]);
    expect(weeks.map(({ setting }) => setting)).toEqual(
      trialOrder({ pairs: 2, seed: 7 }).map(({ setting }) => setting),
    );
    expect(() => trialCalendar({ pairs: 2, seed: 7 }, "2026-02-30")).toThrow(/no date/);
  });

  it("is paired by the calendar that was printed: its difference is found, washout days and other days left out", () => {
    const calendar = trialCalendar({ pairs: 4, seed: 3 }, "2026-06-01");
    const days = Array.from({ length: 9 * 7 }, (_, k) => {
      const date = new Date(Date.UTC(2026, 4, 29 + k)).toISOString().slice(0, 10);
      const week = calendar.find(({ from, to }) => date >= from && date <= to);
      const isCounted = week !== undefined && date >= week.countsFrom;
      return { date, outdoorC: 24.5, value: isCounted ? (week.setting === "proposed" ? 90 : 100) : 900 };
    });
    const pairs = weekPairs(days, calendar);
    expect(pairs).toHaveLength(4);
    for (const { present, proposed } of pairs) expect(proposed - present).toBeCloseTo(-10, 9);
    const other = weekPairs(days, trialCalendar({ pairs: 4, seed: 5 }, "2026-06-01"));
    expect(other.some(({ present, proposed }) => Math.abs(proposed - present + 10) > 1)).toBe(true);
    const cut = days.filter(({ date }) => date < (calendar.at(-1)?.from ?? ""));
    expect(weekPairs(cut, calendar)).toHaveLength(3);
  });

  it("is read by the paired test, and not at all with one pair", () => {
    const about = {
      id: "energy" as const,
      label: "Energy of a week",
      unit: "kWh",
      meant: { sign: -1 as const, expected: -90 },
    };
    const pairs = [1000, 1040, 980, 1010, 1060, 990, 1030, 1005].map((present, k) => ({
      present,
      proposed: present - 90 + (k % 2 === 0 ? 15 : -15),
    }));
    expect(switchbackProof(pairs, about).verdict).toBe("shown");
    expect(switchbackProof(pairs.slice(0, 1), about).verdict).toBe("too-early");
  });
});
