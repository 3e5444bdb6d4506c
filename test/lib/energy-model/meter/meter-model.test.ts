import { describe, expect, it, test } from "vitest";
import { candidateOf, chooseModel } from "@/lib/energy-model/change-point/choose-model";
import { meterFindingWords } from "@/lib/energy-model/findings";
import { modelOfBills, modelOfDays } from "@/lib/energy-model/meter/meter-model";
import type { MeterDay } from "@/lib/energy-model/meter/meter-record";
import { billsOf, syntheticDays } from "./synthetic-meter";

const OFFICE = { base: 1900, coolingSlope: 73, coolingChangeC: 12, noiseKwh: 90, idleKwh: 800 };
const office = syntheticDays(OFFICE);
const codes = (days: readonly MeterDay[]) => modelOfDays(days).findings.map((each) => `${each.severity} ${each.code}`);

test("an office has a model of its occupied days, and none of days that do not follow the weather", () => {
  const model = modelOfDays(office);
  expect(model.status).toBe("ok");
  const [occupied, other] = model.types;
  expect(occupied?.choice.status === "ok" && occupied.choice.chosen.model).toMatchObject({ kind: "3PC" });
  expect(occupied?.readings).toHaveLength(261);
  expect(other?.type).toBe("other-days");
  expect(other?.choice.status).toBe("refused");
  expect(codes(office)).toEqual(["note no-model"]);
});

test("twelve bills make a model of a mean day", () => {
  const model = modelOfBills(billsOf(syntheticDays({ ...OFFICE, idleKwh: undefined })));
  expect(model).toMatchObject({ status: "ok", length: "bill", record: { count: 12, usable: 12 } });
  const choice = model.types[0]?.choice;
  const fitted = choice?.status === "ok" ? choice.chosen.model : null;
  expect(fitted?.kind).toMatch(/3PC|4P/);
});

test("planted slope and change point lie in their 90 % intervals about nine times in ten, autocorrelated noise and all", () => {
  let [slopes, changes] = [0, 0];
  const meters = 200;
  for (let seed = 1; seed <= meters; seed++) {
    const days = syntheticDays({ ...OFFICE, idleKwh: undefined, rho: 0.5, seed });
    const readings = {
      outdoorC: Float64Array.from(days, (day) => day.outdoorC),
      energyKwh: Float64Array.from(days, (day) => day.energyKwh),
    };
    const fit = chooseModel(readings, "day").candidates.find((each) => each.model.kind === "3PC");
    if (fit?.model.kind !== "3PC" || !fit.errors) throw new Error("no 3PC");
    const { coolingSlope = 0, coolingChangeC = 0 } = fit.errors.standardErrors;
    if (Math.abs(fit.model.coolingSlope - 73) <= 1.645 * coolingSlope) slopes++;
    if (Math.abs(fit.model.coolingChangeC - 12) <= 1.645 * coolingChangeC) changes++;
  }
  for (const share of [slopes / meters, changes / meters]) {
    // Temperatures are less persistent than the noise is taken to be, so the correction errs to the wide side.
    expect(share).toBeGreaterThan(0.87);
    expect(share).toBeLessThan(0.98);
  }
});

describe("refuses, and says why", () => {
  const stop = (code: string): string => `disqualifies ${code}`;

  it("a record with too many days missing, 0 among them", () => {
    const holed = office.map((day, i) => (i % 8 === 0 ? { ...day, energyKwh: i % 16 === 0 ? 0 : Number.NaN } : day));
    expect(codes(holed)).toContain(stop("days-few"));
    const { evidence } = modelOfDays(holed).findings.find((each) => each.code === "days-few") ?? {};
    expect(evidence).toMatchObject({ days: 319, energyDays: 23, zeroDays: 23, outdoorDays: 0 });
    expect(codes(office.slice(100))).toContain(stop("days-few"));
  });

  it("eleven bills", () => {
    const model = modelOfBills(billsOf(office).slice(1));
    expect(model.status).toBe("refused");
    expect(model.findings.map((each) => each.code)).toContain("bills-few");
  });

  it("a meter that does not follow the weather", () => {
    const flat = syntheticDays({ ...OFFICE, coolingSlope: 0, idleKwh: undefined });
    expect(codes(flat)).toContain(stop("no-model"));
    expect(codes(flat).some((each) => /slope-(wrong-sign|not-significant|days-few)/.test(each))).toBe(true);
  });

  it("a meter that uses less the hotter it gets", () => {
    const upside = syntheticDays({
      ...OFFICE,
      base: 5000,
      coolingSlope: -73,
      coolingChangeC: 15,
      noiseKwh: 5,
      idleKwh: undefined,
    });
    const model = modelOfDays(upside);
    const cooling = model.types[0]?.choice.candidates.find((each) => each.model.kind === "3PC");
    expect(cooling?.faults.map((each) => each.code)).toContain("slope-wrong-sign");
  });

  it("a meter that something else drives", () => {
    const wild = syntheticDays({ ...OFFICE, noiseKwh: 900, idleKwh: undefined }).map((day) => ({
      ...day,
      energyKwh: Math.max(1, day.energyKwh),
    }));
    expect(codes(wild)).toContain(stop("cv-rmse-high"));
  });

  it("a climate that hardly changes", () => {
    const mild = office.map((day) => ({ ...day, outdoorC: 20 + day.outdoorC / 5 }));
    expect(codes(mild)).toContain(stop("temperature-span-short"));
  });

  it("a slope that rests on a few hot days", () => {
    const days = office.slice(0, 300);
    const readings = {
      outdoorC: Float64Array.from(days, (_, i) => (i < 6 ? 20 + i : i / 30)),
      energyKwh: Float64Array.from(days, (_, i) => (i < 6 ? 1000 + 100 * (i + 1) : 500 + (i % 3))),
    };
    const model = { kind: "3PC" as const, base: 501, coolingSlope: 50, coolingChangeC: 12 };
    expect(candidateOf(model, readings, "day").faults.map((each) => each.code)).toContain("slope-days-few");
  });

  it("no days at all", () => {
    expect(modelOfDays([])).toMatchObject({ status: "refused", types: [] });
    expect(modelOfBills([])).toMatchObject({ status: "refused", types: [] });
  });
});

test("names days that used far more than the rest, and keeps them", () => {
  const days = office.map((day, i) => (i === 40 ? { ...day, energyKwh: 20_000 } : day));
  const finding = modelOfDays(days).findings.find((each) => each.code === "energy-unusual");
  expect(finding?.evidence.days).toEqual([days[40]?.date]);
});

test("every finding of these meters has its sentence, without a hole in it", () => {
  const meters = [
    office,
    office.slice(100),
    office.map((day) => ({ ...day, outdoorC: 20 + day.outdoorC / 5 })),
    syntheticDays({ ...OFFICE, coolingSlope: 0 }),
    syntheticDays({ ...OFFICE, noiseKwh: 900 }).map((day) => ({ ...day, energyKwh: Math.max(1, day.energyKwh) })),
  ];
  const findings = meters.flatMap((days) => {
    const { findings, types } = modelOfDays(days);
    return [...findings, ...types.flatMap((type) => type.choice.candidates.flatMap((each) => each.faults))];
  });
  expect(new Set(findings.map((each) => each.code)).size).toBeGreaterThanOrEqual(5);
  for (const finding of findings)
    for (const unit of ["C", "F"] as const)
      expect(meterFindingWords(finding, unit).what).not.toMatch(/undefined|NaN|null|\[object/);
});
