import type { Range80, Working } from "@/lib/working/working";
import type { Lever } from "./lever";
import type { CircuitRelief } from "./live-circuit";

export const SAVING_PARTS = {
  setpoint: "cooling held at a warmer setpoint",
  deadband: "cooling of air at minimum airflow",
  reheat: "cooling and heat of reheated air",
  fan: "fan, with the cooling of its heat",
  heaters: "space heaters given up",
  rebound: "personal fans and foot warmers that come in their place",
} as const;
export type SavingPart = keyof typeof SAVING_PARTS;

/** A sum of a year with its range over the draws and the working of its stated value. */
export type Worked = Range80 & { stated: number; working: Working };

/** Reports of a year's cooling season: before, after, and a 90 % interval of the count that a year may bring after. */
export type ExpectedReports = { before: number; after: number; low: number; high: number };

/**
 * What a proof may look for: the season and hours of the proposal by themselves, while the change stands. Rise of the mean zone air
 * [K], share of the degree-hours below the zones' targets that is left, and reports after over before; null without desks on record.
 */
export type WhileItStands = {
  riseK: number;
  degreeHoursLeft: number;
  coldRatio: number | null;
  hotRatio: number | null;
};

/** What the levers of one variant would make of the building in a year. Savings count positive. */
export type LivePicture = {
  saving: Worked;
  electricKwh: Worked;
  /** Electricity of an occupied day in the season while the change stands: what a meter should show. Not in older copies. */
  electricPerDayKwh?: Worked;
  heatKwh: Worked;
  emissionsKgCo2: Worked;
  parts: { id: SavingPart; label: string; stated: number }[];
  /** Occupied cooling-season hours by zone air temperature, half a kelvin each, of all zones of the proposal. */
  temps: { lowC: number; hoursBefore: number; hoursAfter: number }[];
  outsideComfort: { before: number; after: number };
  /** Not in older copies. */
  whileItStands?: WhileItStands;
  /** Null where no zone of the proposal has desks and zone air on record. */
  cold: ExpectedReports | null;
  hot: ExpectedReports | null;
  heatersGiven: { expected: number; of: number; low: number; high: number };
  /** Circuits that heaters of these zones hang on, before and after. Not in older copies. */
  circuits?: CircuitRelief[];
  /** High power of the heaters expected to go [W], and of what comes in their place. */
  circuitRelief: { goneW: number; addedW: number };
  /** Levers that change nothing where they were chosen, with why. */
  idle: { zoneId: number; code: string; lever: Lever; reason: string }[];
};
