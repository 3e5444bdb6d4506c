import { readFileSync } from "node:fs";
import { ALL_ASSUMPTIONS } from "@/lib/assumptions/all-assumptions";
import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { AssessedZone, AssessmentInput } from "@/lib/overcooling/assessment-input";
import type { AnnualExposure, StateExposure, ZoneExposure } from "@/lib/trends/zone-exposure";
import type { OccupiedState } from "@/lib/trends/zone-state";

const weatherFile = new URL("../../check-values/energy-model/greensboro-dry-bulb.json", import.meta.url);

/** Greensboro's typical year [°C]. */
export const GREENSBORO_C: Float64Array = Float64Array.from(
  (JSON.parse(readFileSync(weatherFile, "utf8")) as { dryBulbTenthsC: number[] }).dryBulbTenthsC,
  (tenths) => tenths / 10,
);

/** Hours ending 8 to 18 of every day, each weighted 5/7: the occupied hours of the reference's worked building. */
export const WORKED_HOURS: Float64Array = Float64Array.from(GREENSBORO_C, (_, i) => {
  const hourEnding = (i % 24) + 1;
  return hourEnding >= 8 && hourEnding <= 18 ? 5 / 7 : 0;
});

export const defaults = (changes: Record<string, Partial<ResolvedAssumption>> = {}): ResolvedAssumption[] =>
  ALL_ASSUMPTIONS.map((each) => ({ ...each, origin: "default" as const, ...changes[each.id] }));

/** An assumption held at one value, as a building's own would be. */
export const held = (value: number): Partial<ResolvedAssumption> => ({ value, low: value, high: value });

export type StateYear = { hours: number; depthK: number };

/** A zone whose record is as long as its year; degree-hours are hours times depth. */
export function zone(
  zoneId: number,
  states: Partial<Record<OccupiedState, StateYear>>,
  changes: Partial<AssessedZone> = {},
): AssessedZone {
  const of = (state: OccupiedState): StateYear => states[state] ?? { hours: 0, depthK: 0 };
  const annual = {
    coolingSeasonHours: (["cooling", "deadband", "reheat", "fault", "undetermined"] as const).reduce(
      (sum, state) => sum + of(state).hours,
      0,
    ),
    byState: perState((state) => ({ hours: of(state).hours, overcoolingKh: of(state).hours * of(state).depthK })),
    extrapolatedFraction: 0,
    method: "outdoor-bins",
  } satisfies AnnualExposure;
  const byState = perState(
    (state): StateExposure => ({
      hours: of(state).hours,
      overcoolingKh: of(state).hours * of(state).depthK,
      hoursBelowTarget: of(state).depthK > 0 ? of(state).hours : 0,
      meanZoneAirTempC: 23 - of(state).depthK,
      meanCoolingSetpointC: 22,
      meanHeatingSetpointC: 21,
      meanAirflowM3ps: state === "cooling" ? 0.3 : 0.18,
      meanOutdoorAirTempC: 25,
    }),
  );
  const exposure: ZoneExposure = {
    zoneId,
    fromUtcSeconds: 0,
    toUtcSeconds: 0,
    stepSeconds: 900,
    targetZoneAirTempC: 23,
    occupiedHours: annual.coolingSeasonHours,
    occupiedHoursWithoutData: 0,
    coolingSeasonHours: annual.coolingSeasonHours,
    byState,
    byOutdoorBin: null,
    byTarget: [],
    occupiedZoneAirTempC: null,
    hasTrend: {
      coolingSetpoint: true,
      heatingSetpoint: true,
      airflow: true,
      reheatValve: true,
      dischargeAir: true,
      damper: true,
      occupancy: false,
      coolingStage: false,
    },
    findings: [],
  };
  return {
    zoneId,
    code: `1-${String(zoneId).padStart(2, "0")}`,
    floorAreaM2: 140,
    targetZoneAirTempC: null,
    designAirflowM3ps: 0.6,
    minimumAirflowM3ps: 0.18,
    minimumAirflowOrigin: "entered",
    annual,
    exposure,
    devices: [],
    coldReportsPerYear: 0,
    fixInProgress: false,
    ...changes,
  };
}

const perState = <T>(of: (state: OccupiedState) => T): Record<OccupiedState, T> => ({
  cooling: of("cooling"),
  deadband: of("deadband"),
  reheat: of("reheat"),
  fault: of("fault"),
  undetermined: of("undetermined"),
});

export const heater = (deviceId: number, energyKwh = 360): AssessedZone["devices"][number] => ({
  deviceId,
  label: `H-${deviceId}`,
  kind: "space-heater",
  energyKwhPerYear: { value: energyKwh, low: 0.9 * energyKwh, high: 1.1 * energyKwh },
  highPowerW: 1420,
  settingsWithoutPower: [],
});

/** An invented office of 36 zones with records, heaters and reports. */
export function office(changes: Partial<AssessmentInput> = {}): AssessmentInput {
  return {
    currency: "USD",
    floorAreaM2: 36 * 140,
    targetZoneAirTempC: 23,
    presentCoolingSetpointC: 21.5,
    presentCoolingSetpointOrigin: "entered",
    systemType: "vav-reheat-high-minimum",
    hasEconomizer: true,
    heatingFuel: "gas",
    electricity: {
      kind: "marginal",
      pricePerKwh: 0.085,
      demandPricePerKw: 12,
      demandMonths: 5,
      pricedHours: null,
      demandYear: null,
    },
    heatPricePerKwh: 1 / 29.3071,
    complaint: { hours: 1, labourPricePerHour: 55 },
    weather: { dryBulbC: GREENSBORO_C, occupied: WORKED_HOURS },
    assumptions: defaults(),
    zones: Array.from({ length: 36 }, (_, i) =>
      zone(
        i + 1,
        {
          cooling: { hours: 760 - 10 * i, depthK: 1.2 },
          deadband: { hours: 670, depthK: 0.2 + 0.06 * i },
          reheat: { hours: 480 - 10 * i, depthK: 2 },
          undetermined: { hours: i % 6 === 0 ? 40 : 0, depthK: 0.5 },
        },
        { devices: i % 2 === 0 ? [heater(100 + 2 * i), heater(101 + 2 * i)] : [], coldReportsPerYear: i % 3 },
      ),
    ),
    meter: null,
    proofs: [],
    proofsOnSameDays: [],
    seed: 20260101,
    draws: 5000,
    ...changes,
  };
}
