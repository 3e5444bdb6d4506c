import { expect, test } from "vitest";
import { energyScatterConfig } from "@/app/_components/charts/energy-scatter-config";
import {
  candidateLines,
  energyGroups,
  meterFindingLines,
  meterLede,
  modelLines,
  readingLines,
  scatterLabel,
} from "@/app/buildings/[buildingId]/energy-meter/view-model";
import { modelledEnergyKwh } from "@/lib/energy-model/change-point/change-point-model";
import { candidateOf } from "@/lib/energy-model/change-point/choose-model";
import { fitModel } from "@/lib/energy-model/change-point/fit-model";
import { type MeterModel, modelOfDays } from "@/lib/energy-model/meter/meter-model";
import { syntheticDays } from "../../lib/energy-model/meter/synthetic-meter";

const days = syntheticDays({ base: 1900, coolingSlope: 73, coolingChangeC: 12, noiseKwh: 90, idleKwh: 800 });
const model = modelOfDays(days);
const inC = { temperatureUnit: "C" } as const;
const inF = { temperatureUnit: "F" } as const;

test("a line has its corners on the model, for every kind", () => {
  const readings = {
    outdoorC: Float64Array.from(days, (day) => day.outdoorC),
    energyKwh: Float64Array.from(days, (day) => day.energyKwh),
  };
  for (const kind of ["2P", "3PC", "3PH", "4P", "5P"] as const) {
    const fitted = fitModel(kind, readings);
    if (!fitted) throw new Error("no model");
    const chosen = candidateOf(fitted, readings, "day");
    const errors = chosen.errors ?? { covariance: [], standardErrors: {} };
    const choice = { status: "ok", chosen: { ...chosen, errors }, candidates: [chosen], kindsLeftOut: [] } as const;
    const one: MeterModel = {
      ...model,
      types: [{ type: "bills", readings: [], choice: { ...choice, candidates: [chosen], kindsLeftOut: [] } }],
    };
    const [group] = energyGroups(one);
    expect(group?.line.length).toBe({ "2P": 2, "3PC": 3, "3PH": 3, "4P": 3, "5P": 4 }[kind]);
    for (const { outdoorC, energyKwh } of group?.line ?? [])
      expect(energyKwh, kind).toBeCloseTo(modelledEnergyKwh(fitted, outdoorC), 6);
    expect(group?.line[0]?.outdoorC).toBe(chosen.fittedC.lowC);
    expect(group?.line.at(-1)?.outdoorC).toBe(chosen.fittedC.highC);
  }
});

test("days without a model are drawn without a line, and said to have none", () => {
  const [occupied, other] = energyGroups(model);
  expect(occupied?.line).toHaveLength(3);
  expect(other).toMatchObject({ name: "Other days", line: [] });
  expect(modelLines(model, inC).map((line) => line.kind)).toEqual(["3PC", "no model"]);
});

test("a record that is refused is drawn without a line, whatever its models would be", () => {
  const short = modelOfDays(days.slice(0, 300));
  expect(short.status).toBe("refused");
  expect(short.types[0]?.choice.status).toBe("ok");
  expect(energyGroups(short).map((group) => group.line)).toEqual([[], []]);
  expect(modelLines(short, inC).map((line) => line.kind)).toEqual(["no model", "no model"]);
  const verdicts = candidateLines(short, inC).map((line) => line.verdict);
  expect(verdicts).not.toContain("taken");
  expect(verdicts).toContain("the best of them, but the record is not enough for any");
  const shown = { key: "1", name: "Meter", model: short, worth: null, findings: [] };
  expect(scatterLabel(shown)).not.toContain("fitted line");
});

test("slopes and change points are shown in the building's units, slopes without the 32 of the scale", () => {
  const [c] = modelLines(model, inC);
  const [f] = modelLines(model, inF);
  const number = (text: string | undefined): number => Number(text?.split(" ")[0]);
  expect(number(f?.coolingSlope) * 1.8).toBeCloseTo(number(c?.coolingSlope), 0);
  expect(number(f?.coolingChange)).toBeCloseTo(number(c?.coolingChange) * 1.8 + 32, 0);
  expect(c?.heatingSlope).toBe("");
});

test("of the models tried one is taken, and each other says why not", () => {
  const lines = candidateLines(model, inC);
  expect(lines.filter((line) => line.verdict === "taken")).toHaveLength(1);
  expect(lines.every((line) => line.verdict.length > 4)).toBe(true);
  expect(
    lines
      .filter((line) => line.type === "Occupied days")
      .map((line) => line.kind)
      .sort(),
  ).toEqual(["2P", "3PC", "3PH", "4P", "5P"]);
});

test("the table holds every reading of the picture, by date", () => {
  const lines = readingLines(model, inF);
  expect(lines).toHaveLength(365);
  expect(lines.map((line) => line.date)).toEqual(days.map((day) => day.date));
});

test("the one sentence says what there is, and what there is not", () => {
  expect(meterLede({ meters: [], shown: null })).toContain("Bring in");
  const shown = { key: "1", name: "Main Meter", model, worth: null, findings: [] };
  const meters = [{ key: "1", name: "Main Meter" }];
  expect(meterLede({ meters, shown: { ...shown, model: null } })).toContain("no outdoor air temperature");
  expect(meterLede({ meters, shown: { ...shown, model: { ...model, status: "refused" } } })).toContain(
    "no model may be used",
  );
  expect(meterLede({ meters, shown })).toContain("does not say what a setpoint is worth");
  expect(scatterLabel(shown)).toBe(
    "Main Meter: energy of a day against mean outdoor air temperature with the fitted line",
  );
});

test("findings have their weight and a sentence", () => {
  const lines = meterFindingLines(
    [...model.findings, { code: "outdoor-missing", severity: "disqualifies", evidence: {} }],
    inC,
  );
  expect(lines.map((line) => line.severity)).toEqual(["note", "disqualifies"]);
  for (const { sentence } of lines) expect(String(sentence).length).toBeGreaterThan(20);
});

const theme = {
  paper: "#fff",
  ink: "#111",
  inkSoft: "#555",
  rule: "#ccc",
  cold: "#00f",
  warm: "#f00",
  comfortBand: "#eee",
  stateCooling: "#123",
  stateReheat: "#234",
  stateDeadband: "#345",
  stateUndetermined: "#456",
  stateFault: "#567",
  fontFamily: "sans-serif",
};

test("the chart draws a group as marks and a line, in °F where the building is", () => {
  const config = energyScatterConfig(energyGroups(model), theme, "F");
  expect(config.data.datasets).toHaveLength(4);
  const [marks, line] = config.data.datasets;
  expect(marks).toMatchObject({ showLine: false });
  expect(marks?.label).toBeUndefined();
  expect(line?.label).toBe("Occupied days");
  const [x] = (marks?.data ?? []).map((point) => (typeof point === "object" ? point?.x : null));
  const coldest = Math.min(...(energyGroups(model)[0]?.points ?? []).map((point) => point.outdoorC));
  expect(x).toBeCloseTo(coldest * 1.8 + 32, 9);
  // Other days have no line: their marks bear the name.
  expect(config.data.datasets[2]).toMatchObject({ label: "Other days" });
});
