import { expect, test } from "vitest";
import { mechanicalFraction } from "@/lib/energy-model/mechanical-fraction";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import type { Working } from "@/lib/working/working";
import { evaluateFormula, workingsIn } from "./evaluate-formula";
import { defaults, GREENSBORO_C, office, WORKED_HOURS } from "./offices";
import { plantedMeter } from "./planted-meter";

const ok = (input: AssessmentInput): Assessed => {
  const result = assessBuilding(input);
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};
const withoutRecords = office().zones.map((each) => ({ ...each, annual: null, exposure: null }));

/** Assumptions a third of the way to their low ends: no factor is 1 and no offset 0. */
const shifted = () =>
  defaults().map((each) => ({ ...each, value: (2 * each.value + each.low) / 3, origin: "entered" as const }));

const CASES: [name: string, input: AssessmentInput][] = [
  ["measured zones", office({ draws: 200 })],
  [
    "measured zones, nothing known of airflows",
    office({
      draws: 200,
      zones: office().zones.map((each) => ({
        ...each,
        designAirflowM3ps: null,
        minimumAirflowM3ps: null,
        minimumAirflowOrigin: null,
        exposure: null,
      })),
    }),
  ],
  [
    "measured single-zone units, no economizer, electric heat",
    office({ draws: 200, systemType: "single-zone-dx", hasEconomizer: false, heatingFuel: "electricity" }),
  ],
  ["estimate", office({ draws: 200, zones: withoutRecords })],
  [
    "estimate, blended price, heat without a price",
    office({
      draws: 200,
      zones: withoutRecords,
      heatPricePerKwh: null,
      electricity: {
        kind: "blended",
        pricePerKwh: 0.13,
        demandPricePerKw: null,
        demandMonths: null,
        pricedHours: null,
        demandYear: null,
      },
    }),
  ],
  ["screening", office({ draws: 200, weather: null })],
  ["measured zones, calibrated to the meter", office({ draws: 200, meter: plantedMeter() })],
  ["estimate, calibrated to the meter", office({ draws: 200, zones: withoutRecords, meter: plantedMeter() })],
  ["measured zones, every assumption off its default", office({ draws: 200, assumptions: shifted() })],
  ["estimate, every assumption off its default", office({ draws: 200, assumptions: shifted(), zones: withoutRecords })],
];

test.each(CASES)("every printed formula gives its printed result: %s", (_, input) => {
  const result = ok(input);
  let checked = 0;
  for (const component of result.components) {
    expect(component.working.result.value).toBe(component.statedValue);
    for (const working of workingsIn(component.working)) {
      const value = evaluateFormula(working) ?? overTheYear(working);
      const wanted = working.result.value;
      expect(Math.abs(value - wanted), working.formula).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));
      checked++;
    }
  }
  expect(checked).toBeGreaterThan(10);
});

/** The four formulas over the hours of the weather year, hour by hour. */
function overTheYear(working: Working): number {
  const of = (symbol: string): number => working.terms.find((each) => each.symbol === symbol)?.value ?? Number.NaN;
  const [supplyAirTempC, returnAirTempC] = [of("T_sat"), of("T_ra")];
  let [sum, hours, load] = [0, 0, 0];
  const setpoint = working.terms.find((each) => each.symbol === "T_set" || each.symbol === "T_t")?.value ?? Number.NaN;
  const hasEconomizer = of("f_m") !== 1 || working.notes?.[0]?.includes("economizer cools") === true;
  GREENSBORO_C.forEach((outdoorAirTempC, i) => {
    const part = WORKED_HOURS[i] as number;
    const m = mechanicalFraction({ outdoorAirTempC, supplyAirTempC, returnAirTempC, hasEconomizer: true });
    if (outdoorAirTempC >= supplyAirTempC) {
      sum += part * m;
      hours += part;
    }
    load += part * (hasEconomizer ? m : 1) * Math.max(0, outdoorAirTempC - (setpoint - of("q") / of("UA")));
  });
  if (/^(D_[12]|u)$/.test(working.result.symbol)) return overTheDays(working);
  if (working.result.symbol === "H_s") return hours;
  if (working.result.symbol === "m_w") return sum / hours;
  if (/^Q_[01]$/.test(working.result.symbol)) return of("UA") * of("f_m") * load;
  throw new Error(`"${working.formula}" cannot be checked`);
}

/** The formulas over the days of the planted meter's year, day by day. */
function overTheDays({ result, terms }: Working): number {
  const of = (symbol: string): number => terms.find((each) => each.symbol === symbol)?.value ?? Number.NaN;
  const days = plantedMeter().days.find(({ type }) => result.label.includes(type.replace("-", " ")));
  if (!days) throw new Error(`no days for "${result.label}"`);
  const above = (changeC: number): number =>
    days.outdoorC.reduce((sum, each, i) => sum + (days.daysEach[i] as number) * Math.max(0, each - changeC), 0);
  if (result.symbol === "D_1") return above(of("T_cp"));
  if (result.symbol === "D_2") return above(of("T_cp") + of("r"));
  const { model, errors } = days.fit;
  if (model.kind !== "3PC") throw new Error(`the planted meter has a ${model.kind}`);
  const [slope, changeC] = [model.coolingSlope, model.coolingChangeC];
  // Each day whose mean the change point passes on its way saves a whole slope less.
  const passed = days.outdoorC.filter((each) => each >= changeC && each < changeC + of("r")).length;
  const gradient = [0, above(changeC) - above(changeC + of("r")), -slope * passed];
  const variance = gradient.reduce(
    (sum, gi, i) => sum + gradient.reduce((row, gj, j) => row + gi * gj * (errors.covariance[i]?.[j] ?? 0), 0),
    0,
  );
  return Math.sqrt(variance);
}

test("terms have units, origins and sources, and their symbols are not ambiguous", () => {
  for (const [, input] of CASES) {
    for (const { working } of ok(input).components) {
      for (const each of workingsIn(working)) {
        const symbols = each.terms.map((term) => term.symbol);
        expect(new Set(symbols).size, each.formula).toBe(symbols.length);
        for (const term of each.terms) {
          if (term.assumptionId) expect(term.source, term.symbol).toBeTruthy();
          if (term.low !== undefined) expect(term.low).toBeLessThanOrEqual(term.value);
          if (term.high !== undefined) expect(term.high).toBeGreaterThanOrEqual(term.value);
          if (term.origin === "computed" && !term.working)
            expect(term.source, `${each.formula}: ${term.symbol}`).toBeTruthy();
        }
      }
    }
  }
});

test("says why the parts of the headline differ from the stated values", () => {
  for (const { working } of ok(office({ draws: 200 })).components) {
    expect(working.notes?.some((each) => each.includes("those parts add up to the headline"))).toBe(true);
  }
});

test("a term that many zones share is worked out once", () => {
  const setpoint = ok(office({ draws: 200 })).components.find((each) => each.id === "setpoint")?.working as Working;
  const times = workingsIn(setpoint).filter((each) => each.result.symbol === "m_w").length;
  expect(times).toBe(1);
  expect(JSON.stringify(setpoint)).toContain("worked out above, under zone 1-01");
});

// By hand, zone 1-02: 1.1 W/m²K × 140 m² = 0.154 kW/K; 750 h × 1.2 K = 900 K·h; COP 3.3; 0.085 USD/kWh.
test("one zone's setpoint cost can be worked out by hand", () => {
  const result = ok(office({ draws: 200 }));
  const part = result.zones
    .find((each) => each.code === "1-02")
    ?.byComponent.find((each) => each.componentId === "setpoint");
  const fraction =
    workingsIn(result.components.find((each) => each.id === "setpoint")?.working as Working).find(
      (each) => each.result.symbol === "m",
    )?.result.value ?? Number.NaN;
  expect(part?.statedValue).toBeCloseTo(((0.154 * 900 * fraction) / 3.3) * 0.085, 9);
});
