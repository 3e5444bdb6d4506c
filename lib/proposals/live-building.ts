import type { SeasonRecord } from "@/lib/comfort-reports/both-sides/season-record";
import type { Term } from "@/lib/working/working";
import type { LiveCircuit } from "./live-circuit";
import type { SeasonCalendar } from "./season-calendar";

/**
 * A quantity that all zones share: its stated value with where that comes from, and the same draws as the cost of
 * overcooling was worked out with, in their order, so that what moves together there moves together here.
 */
export type SharedValue = { term: Term; draws: readonly number[] };

export const SHARED_VALUES = [
  "heatLossPerArea",
  "cop",
  "mechanicalFraction",
  "supplyAirTemp",
  "returnAirTemp",
  "heatEfficiency",
  "requiredAirflowFraction",
  "outdoorAirPerArea",
  "fanPowerPerAirflow",
  "fanSavingFactor",
  "heaterInSeasonFraction",
  "heaterRemovalFraction",
  "changeKeptFraction",
  "electricityPrice",
  "electricityEmissions",
  "heatEmissions",
] as const;
export type SharedName = (typeof SHARED_VALUES)[number];

/** The shared values of one draw, or as stated. */
export type SharedNumbers = Record<SharedName, number>;

/** States of a zone that a lever may act on; `other` are hours of a fault and hours whose state the trends do not tell. */
export const LIVE_STATES = ["cooling", "deadband", "reheat", "other"] as const;
export type LiveStateName = (typeof LIVE_STATES)[number];

/** Occupied cooling-season hours a year in a state, and how they lie over zone air temperature. */
export type LiveState = {
  hours: number;
  /** The same by outdoor bin of the building's calendar. */
  hoursByBin: readonly number[];
  /** Mean zone air; the zone's target where no hour fell into the state. */
  zoneAirTempC: number;
  /** Hours below each of the building's `tempsC`. */
  hoursBelow: readonly number[];
  /** Mean depth below the first of `tempsC` of the hours that lie below it [K]. */
  lowTailK: number;
};

/** What a proposal needs of a zone: plain numbers of a year, fit for the browser and for a frozen copy. */
export type LiveZone = {
  zoneId: number;
  code: string;
  floorAreaM2: number;
  /** Null without a usable record: then no saving of a setpoint or airflow can be worked out. */
  states: Record<LiveStateName, LiveState> | null;
  /** Hours a year in the state of a fault, among those of `other`. */
  faultHours: number;
  targetZoneAirTempC: number;
  coolingSetpointC: number | null;
  heatingSetpointC: number | null;
  /** Null without variable airflow, or where a unit of its own serves the zone. */
  airflow: { designM3ps: number; minimumM3ps: number; coolingM3ps: number } | null;
  /** In use; energy of a whole year. */
  heaters: { count: number; energyKwh: number; highPowerW: number };
  desks: number;
};

/** Everything that a proposal's figures are worked out from, in the browser as on the server. */
export type LiveBuilding = {
  currency: string;
  tier: number;
  tierLabel: string;
  shared: Record<SharedName, SharedValue>;
  /** Per kWh of bought heat; null where heat has no price. With electric reheat the electricity price counts. */
  heatPricePerKwh: number | null;
  isHeatElectric: boolean;
  /** Hours and labour of one report, in major units; null where the building has given none. */
  costPerReport: number | null;
  /** Occupied days of a year. */
  occupiedDays: number;
  /** When the season's hours lie in the year. */
  calendar: SeasonCalendar;
  /** Hours and reports of the cooling season that expected reports are fitted to; null without a record of zones with desks. */
  reports: SeasonRecord | null;
  /** Circuits that heaters of the register hang on. */
  circuits: readonly LiveCircuit[];
  /** Zone air temperatures against which hours are counted [°C], rising. */
  tempsC: readonly number[];
  /** Air temperatures between which people would vote within half a point of neutral [°C]. */
  comfort: { lowerC: number; upperC: number; source: string };
  zones: readonly LiveZone[];
};
