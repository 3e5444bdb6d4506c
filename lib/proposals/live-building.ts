import type { Term } from "@/lib/working/working";

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
  "fanPowerPerAirflow",
  "fanSavingFactor",
  "heaterRemovalFraction",
  "changeLifeFraction",
  "electricityPrice",
  "electricityEmissions",
  "heatEmissions",
] as const;
export type SharedName = (typeof SHARED_VALUES)[number];

/** Occupied cooling-season hours a year in a state, and the mean zone air [°C] in them. */
export type LiveState = { hours: number; zoneAirTempC: number };

/** What a proposal needs of a zone: plain numbers of a year, fit for the browser and for a frozen copy. */
export type LiveZone = {
  zoneId: number;
  code: string;
  floorAreaM2: number;
  /** Null without a usable record: then no saving of a setpoint or airflow can be worked out. */
  states: Record<"cooling" | "deadband" | "reheat", LiveState> | null;
  /** Hours of a year in the state of a fault. */
  faultHours: number;
  /** Hours of a year below each of the cost curve's temperatures [°C], all states together, rising. */
  hoursBelow: readonly { airTempC: number; hours: number }[];
  seasonHours: number;
  targetZoneAirTempC: number;
  coolingSetpointC: number | null;
  heatingSetpointC: number | null;
  /** Null without variable airflow, or where a unit of its own serves the zone. */
  airflow: { designM3ps: number; minimumM3ps: number; coolingM3ps: number } | null;
  heaters: { count: number; energyKwh: number; lowKwh: number; highKwh: number; highPowerW: number };
  desks: number;
  coldReportsPerYear: number;
  hotReportsPerYear: number;
};

/** Everything that a proposal's figures are worked out from, in the browser as on the server. */
export type LiveBuilding = {
  currency: string;
  tier: number;
  tierLabel: string;
  shared: Record<SharedName, SharedValue>;
  /** Per kWh of bought heat; null where heat has no price or is electric. */
  heatPricePerKwh: number | null;
  isHeatElectric: boolean;
  /** Occupied days of a year. */
  occupiedDays: number;
  /** Air temperatures between which people in summer clothing would vote within half a point of neutral [°C]. */
  comfort: { lowerC: number; upperC: number; source: string };
  zones: readonly LiveZone[];
};
