import type { Finding } from "@/lib/findings/finding";
import type { PlugFindingCode } from "./findings";

/** A level of power at which the device stayed, and what it did there. */
export type PlugState = {
  /** Mean power at this level, and the range of the readings that made it one [W]. */
  powerW: number;
  lowW: number;
  highW: number;
  /** Time at this level [h] and energy used at it [kWh]. */
  hours: number;
  energyKwh: number;
  /** Time for which its setting was selected: its runs with the thermostat's pauses between them [h]. */
  selectedHours: number;
  /** Hours at the level over hours selected. */
  dutyFraction: number;
  longestRunHours: number;
  runs: number;
  /** Setting of the register that the level is taken for, with the watts on record; null when none fits. */
  setting: { name: string; onRecordW: number; basis: string } | null;
};

/** A day of the log by the building's wall clock. */
export type PlugDay = {
  /** `YYYY-MM-DD`; null once the raw readings are deleted: which day it was shows when someone was there. */
  date: string | null;
  energyKwh: number;
  loggedHours: number;
  /** Hours that this day had: 23, 24 or 25. */
  dayHours: number;
  /** A day with occupied hours. */
  isOccupied: boolean;
};

/** What a plug log is reduced to. Its intervals are not in here. */
export type PlugLogFigures = {
  unit: string;
  quantity: string;
  /** Rows of the file by what became of them. */
  rows: { inFile: number; accepted: number; repaired: number; rejected: number; ignored: number };
  /** Usual step between readings, and the longest for which a reading is held [s]. */
  usualStepSeconds: number;
  longestHoldSeconds: number;
  /** Time that readings stand for and time between first and last without one [h]. */
  loggedHours: number;
  gapHours: number;
  gaps: number;
  energyKwh: number;
  meanPowerW: number;
  highestPowerW: number;
  /** From off upwards. */
  states: PlugState[];
  /** Longest run at the highest level, with its beginning [epoch ms], null once raw readings are deleted; null when it never ran. */
  longestFullRun: { hours: number; fromMs: number | null } | null;
  /** Above the off level while nobody is due to be there. */
  outsideOccupied: { hours: number; energyKwh: number };
  onHours: number;
  days: PlugDay[];
  /** Mean power by hour of the day [W], of occupied and of other days; null where no such hour was logged. */
  profile: { occupiedW: (number | null)[]; otherW: (number | null)[] };
  findings: Finding<PlugFindingCode>[];
  readFindings: Finding[];
  notes: { line: number; fate: string; message: string }[];
};
