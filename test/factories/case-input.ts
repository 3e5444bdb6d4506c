import type { CaseInput } from "@/lib/business-case/case-input";
import { seedFromText, uniformAt } from "@/lib/statistics/random";
import { triangularQuantile } from "@/lib/statistics/triangular";
import type { Working } from "@/lib/working/working";

const drawn = (id: string, low: number, mode: number, high: number): number[] =>
  Array.from({ length: 1000 }, (_, i) => triangularQuantile({ low, mode, high }, uniformAt(seedFromText(id), i)));

const PARTS = [
  { label: "cooling held at a warmer setpoint", statedPerYear: 1234.567 },
  { label: "cooling and heat of reheated air", statedPerYear: 801.004 },
  { label: "fan", statedPerYear: 412.333 },
  { label: "space heaters given up", statedPerYear: 650.5 },
  { label: "personal fans and foot warmers that come in their place", statedPerYear: -48.25 },
];
const SAVING = PARTS.reduce((sum, each) => sum + each.statedPerYear, 0);

const savingWorking: Working = {
  formula: "S = sum of the parts",
  terms: PARTS.map(({ label, statedPerYear }, at) => ({
    symbol: `S_${at + 1}`,
    label,
    value: statedPerYear,
    unit: "USD a year",
    origin: "computed",
  })),
  result: { symbol: "S", label: "saving in the first year", value: SAVING, unit: "USD a year" },
};
const emissionsWorking: Working = {
  formula: "m = E * f + (Q * g)",
  terms: [
    { symbol: "E", label: "electricity saved", value: 24000, unit: "kWh a year", origin: "computed" },
    { symbol: "f", label: "CO₂ of a kWh of electricity", value: 0.348, unit: "kg/kWh", origin: "default" },
    { symbol: "Q", label: "heat saved", value: 9000, unit: "kWh a year", origin: "computed" },
    { symbol: "g", label: "CO₂ of a kWh of heat", value: 0.181, unit: "kg/kWh", origin: "default" },
  ],
  result: { symbol: "m", label: "emissions saved", value: 24000 * 0.348 + 9000 * 0.181, unit: "kg a year" },
};

const assumption = (id: string, label: string, value: number, low: number, high: number, unit: string) => ({
  id,
  label,
  value,
  low,
  high,
  unit,
  origin: "default" as const,
  source: "an invented source, for a test",
});

/** An invented business case. */
export const caseInput = (changes: Partial<CaseInput> = {}): CaseInput => ({
  schema: 1,
  number: "7-1",
  issuedAtMs: Date.UTC(2026, 10, 20, 9),
  issuedBy: "E. Engineer",
  building: { name: "Example Hall", timeZone: "America/New_York", currency: "USD", floorAreaM2: 5000 },
  proposal: {
    title: "Warmer setpoints on the third floor",
    purpose: "Twelve zones are kept below 22 °C and their people heat against it.",
    season: "May to September",
    hours: "08:00 to 18:00",
    measures: [
      { zoneCode: "3-01", lever: "Cooling setpoint", change: "raised by 1.0 K", remark: "" },
      {
        zoneCode: "3-02",
        lever: "Cooling setpoint",
        change: "raised by 1.0 K",
        remark: "does nothing: at its minimum airflow",
      },
    ],
  },
  method: {
    tier: 2,
    label: "measured zones, modelled plant",
    costBefore: { p10: 4200, p50: 5200, p90: 6900 },
    isOfSeason: true,
  },
  circuits: [],
  saving: { p10: 2100, p50: 3200, p90: 4300, stated: SAVING, working: savingWorking },
  savingDraws: drawn("saving", 1200, 3050, 5200),
  lifeDraws: drawn("life", 1, 3, 5),
  electricKwh: { p10: 18000, p50: 24500, p90: 31000, stated: 24000, working: null },
  heatKwh: { p10: 5000, p50: 9100, p90: 13000, stated: 9000, working: null },
  emissionsKgCo2: { p10: 7000, p50: 10100, p90: 13000, stated: 9981, working: emissionsWorking },
  emissionScope: "Electricity: scope 2, location-based, average of the grid.",
  parts: PARTS,
  variants: [
    {
      name: "1.0 K warmer",
      proposed: true,
      savingPerYear: { p10: 2100, p50: 3200, p90: 4300 },
      electricKwh: { p10: 18000, p50: 24500, p90: 31000 },
      emissionsKgCo2: { p10: 7000, p50: 10100, p90: 13000 },
      outsideComfort: 0.08,
      coldReportsPerYear: 30.5,
      hotReportsPerYear: 7.2,
      reportsWithheld: false,
    },
    {
      name: "0.5 K warmer",
      proposed: false,
      savingPerYear: { p10: 1000, p50: 1700, p90: 2300 },
      electricKwh: { p10: 9000, p50: 12500, p90: 16000 },
      emissionsKgCo2: { p10: 3500, p50: 5100, p90: 6500 },
      outsideComfort: 0.12,
      coldReportsPerYear: 44,
      hotReportsPerYear: 5.9,
      reportsWithheld: false,
    },
  ],
  comfort: [
    {
      label: "Share of occupied hours outside the comfort range",
      unit: "%",
      decimals: 1,
      before: 21.4,
      after: 8.2,
      interval: null,
    },
    {
      label: "Cold reports",
      unit: "a year",
      decimals: 1,
      before: 61,
      after: 30.5,
      interval: { low: 21, high: 41, level: 90 },
    },
    {
      label: "Hot reports",
      unit: "a year",
      decimals: 1,
      before: 4,
      after: 7.2,
      interval: { low: 3, high: 12, level: 90 },
    },
  ],
  temps: Array.from({ length: 12 }, (_, i) => ({
    lowC: 19.5 + i / 2,
    hoursBefore: 900 * Math.exp(-((i - 4) ** 2) / 5),
    hoursAfter: 900 * Math.exp(-((i - 6.5) ** 2) / 5),
  })),
  temperatureUnit: "C",
  risks: [
    { side: "hot", risk: "People at windows may be too warm.", answer: "The trial stops at three hot reports a week." },
    {
      side: "people",
      risk: "Heaters may stay.",
      answer: "Only half of their energy is counted; desks are asked again.",
    },
  ],
  dataRemarks: [
    { severity: "caution", what: "Two zones have gaps in their airflow.", action: "Bring in the missing weeks." },
  ],
  cautions: [{ text: "Keep paper 3 ft (0.9 m) from a heater.", source: "an invented source" }],
  tornado: [
    { label: "seasonal efficiency of the cooling plant", lowTotal: 4100, highTotal: 2300 },
    { label: "heat loss by floor area", lowTotal: 2400, highTotal: 3900 },
    { label: "share of heaters given up", lowTotal: 2500, highTotal: 3600 },
  ],
  terms: {
    outlay: [
      { label: "controls contractor, two days", amount: 1850.55 },
      { label: "notices", amount: 120 },
    ],
    timing: "end",
  },
  trialWeeks: [],
  verification: [
    { step: "Trial", how: "0.5 K a week", when: "first weeks of the season" },
    { step: "Proof", how: "zone air and reports before and after, weather-comparable", when: "after a season" },
  ],
  assumptions: [
    assumption("change-life", "time until a changed setpoint is changed back", 3, 1, 5, "years"),
    assumption("discount-rate-real", "discount rate without inflation", 0.03, 0.02, 0.07, "per year"),
    assumption("price-escalation-real", "rise of energy prices above inflation", 0.01, -0.01, 0.02, "per year"),
    assumption("emission-factor/electricity", "CO₂ of a kWh of electricity", 0.348, 0.33, 0.373, "kg/kWh"),
    assumption("emission-factor/gas", "CO₂ of a kWh of natural gas", 0.181, 0.18, 0.185, "kg/kWh"),
  ],
  ...changes,
});
