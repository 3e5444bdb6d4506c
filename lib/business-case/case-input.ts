import type { Timing } from "@/lib/finance/present-value";
import type { CircuitRelief } from "@/lib/proposals/live-circuit";
import type { Range80, Working } from "@/lib/working/working";

/** A figure as frozen: its range over the draws, its stated value, and how that is worked out. */
export type CaseFigure = Range80 & { stated: number; working: Working | null };

/** An assumption as it stood at issue. */
export type CaseAssumption = {
  id: string;
  label: string;
  value: number;
  low: number;
  high: number;
  unit: string;
  origin: "default" | "entered";
  /** Published source, or who entered it and why. */
  source: string;
};

/** One part of the saving; `statedPerYear` of all parts adds up to the saving's stated value. */
export type CasePart = { label: string; statedPerYear: number };

/** What is done in one zone. */
export type CaseMeasure = {
  zoneCode: string;
  /** Such as "cooling setpoint". */
  lever: string;
  /** From what to what, with units, such as "21.5 °C to 23.0 °C". */
  change: string;
  /** Why the lever does nothing there, or "". */
  remark: string;
};

/** A variant that was weighed; one of them is the proposal. */
export type CaseVariant = {
  name: string;
  proposed: boolean;
  savingPerYear: Range80;
  electricKwh: Range80;
  emissionsKgCo2: Range80;
  /** Share of occupied cooling-season hours outside the comfort range, 0 to 1. */
  outsideComfort: number;
  /** Of the cooling season; null where no zone of the proposal has desks with zone air on record, or where withheld. */
  hotReportsPerYear: number | null;
  coldReportsPerYear: number | null;
  /** Expected reports are not told: too few people have reported in its zones. */
  reportsWithheld: boolean;
};

/** One line of comfort, as it is and as it is expected, with an interval where one is known (`level` in %). */
export type CaseComfortLine = {
  label: string;
  unit: string;
  decimals: number;
  before: number;
  after: number;
  interval: { low: number; high: number; level: number } | null;
};

/** Money is entered with the case, in major units of the building's currency, at prices of the day of issue. */
export type CaseTerms = {
  outlay: { label: string; amount: number }[];
  timing: Timing;
};

export type CaseTornadoLine = { label: string; lowTotal: number; highTotal: number };

export type CaseRemark = { severity: "note" | "caution" | "disqualifies"; what: string; action: string };

/**
 * All that a business case is made of, frozen at its issue: nothing is looked up when it is printed again. Money in
 * major units of `building.currency`, energy in kWh a year.
 */
export type CaseInput = {
  schema: 1;
  number: string;
  issuedAtMs: number;
  issuedBy: string;
  building: { name: string; timeZone: string; currency: string; floorAreaM2: number };
  proposal: {
    title: string;
    purpose: string;
    season: string;
    hours: string;
    measures: CaseMeasure[];
  };
  /** `isOfSeason`: figures count only what lies in the season and hours; older issues counted the whole cooling season. */
  method: { tier: number; label: string; costBefore: Range80 | null; isOfSeason: boolean };
  saving: CaseFigure;
  /** Saving of each draw in its first year; the same place is the same draw in every case. */
  savingDraws: readonly number[];
  /** Life of the change in each draw [years]. */
  lifeDraws: readonly number[];
  electricKwh: CaseFigure;
  heatKwh: CaseFigure;
  emissionsKgCo2: CaseFigure;
  emissionScope: string;
  parts: CasePart[];
  variants: CaseVariant[];
  comfort: CaseComfortLine[];
  /** Occupied hours a year by zone air temperature, in steps of half a kelvin, of the zones of the proposal. */
  temps: { lowC: number; hoursBefore: number; hoursAfter: number }[];
  temperatureUnit: "C" | "F";
  /** Circuits that heaters of the proposal's zones hang on [A]; none in older issues. */
  circuits: readonly CircuitRelief[];
  /** What may go wrong on either side, and what is done about it. */
  risks: { side: "cold" | "hot" | "plant" | "people"; risk: string; answer: string }[];
  dataRemarks: CaseRemark[];
  cautions: { text: string; source: string }[];
  tornado: CaseTornadoLine[];
  terms: CaseTerms;
  /** Plan of verification, a line a step. */
  verification: { step: string; how: string; when: string }[];
  /** Drawn weeks of a switchback with their days; empty for a trial in steps. */
  trialWeeks: { week: number; pair: number; from: string; to: string; setting: string }[];
  assumptions: CaseAssumption[];
};
