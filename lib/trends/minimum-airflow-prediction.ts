import type { Term, Working } from "@/lib/working/working";
import type { AirAtMinimum } from "./air-at-minimum";
import { type PredictedZoneTemp, predictedZoneTemp } from "./predicted-zone-temp";

/** Hours at minimum airflow from which their means say something. Judgement, no source. */
const LEAST_HOURS = 5;

/** A value with where it comes from, as a working shows it. */
export type SourcedValue = Pick<Term, "value" | "origin" | "source" | "assumptionId" | "href" | "low" | "high">;

export type MinimumAirflowPrediction =
  | {
      status: "ok";
      /** State whose hours it is about. */
      state: "deadband" | "reheat";
      hours: number;
      nowC: number;
      minimumAirflowM3ps: number;
      requiredAirflowM3ps: number;
      /** Zone air at the required airflow, and at its range's ends where it has one [°C]. */
      thenC: number;
      lowC: number;
      highC: number;
      working: Working;
    }
  | { status: "no-hours-at-minimum" }
  /** Reheat hides what the zone itself would settle at: the discharge air would tell. */
  | { status: "needs-discharge-air" }
  | Exclude<PredictedZoneTemp, { status: "ok" }>;

export type PredictionInput = {
  airAtMinimum: { deadband: AirAtMinimum | null; reheat: AirAtMinimum | null };
  minimumAirflowM3ps: SourcedValue;
  requiredAirflowM3ps: SourcedValue & { working?: Working };
  /** Taken where no supply air is trended. */
  assumedSupplyAirTempC: SourcedValue;
  targetZoneAirTempC: SourcedValue;
  /** Path inside the building's pages to the readings. */
  readingsHref: string;
};

/**
 * Zone air temperature [°C] that a zone now kept cold by its minimum airflow would settle at with the required one (reference D3):
 * T' = min(target, T_sat + (T_z - T_in) · V_min / V_req). Between the setpoints T_in is the supply air, as D3 has it. In reheat
 * the coil's heat holds the zone up, and it would go first: T_in is then the discharge air, so that the difference times the
 * airflow is the zone's own heat, and the zone does not fall below its heating setpoint. The state with more hours counts.
 */
export function minimumAirflowPrediction(input: PredictionInput): MinimumAirflowPrediction {
  const { deadband, reheat } = input.airAtMinimum;
  const state = (deadband?.hours ?? 0) >= (reheat?.hours ?? 0) ? "deadband" : "reheat";
  const air = state === "deadband" ? deadband : reheat;
  if (!air || air.hours < LEAST_HOURS) return { status: "no-hours-at-minimum" };
  if (state === "reheat" && air.dischargeAirTempC === null) return { status: "needs-discharge-air" };
  const predicted = (requiredAirflowM3ps: number): PredictedZoneTemp =>
    predictedAt(input, air, state, requiredAirflowM3ps);
  const { requiredAirflowM3ps: required } = input;
  const then = predicted(required.value);
  if (then.status !== "ok") return then;
  // More air needed means less warming.
  const [low, high] = [predicted(required.high ?? required.value), predicted(required.low ?? required.value)];
  return {
    status: "ok",
    state,
    hours: air.hours,
    nowC: air.zoneAirTempC,
    minimumAirflowM3ps: input.minimumAirflowM3ps.value,
    requiredAirflowM3ps: required.value,
    thenC: then.zoneAirTempC,
    lowC: low.status === "ok" ? low.zoneAirTempC : air.zoneAirTempC,
    highC: high.status === "ok" ? high.zoneAirTempC : then.zoneAirTempC,
    working: workingOf(input, air, state, then.zoneAirTempC),
  };
}

function predictedAt(
  input: PredictionInput,
  air: AirAtMinimum,
  state: "deadband" | "reheat",
  requiredAirflowM3ps: number,
): PredictedZoneTemp {
  const supply = air.supplyAirTempC ?? input.assumedSupplyAirTempC.value;
  const targetZoneAirTempC = input.targetZoneAirTempC.value;
  const minimumAirflowM3ps = input.minimumAirflowM3ps.value;
  if (state === "deadband" || air.dischargeAirTempC === null)
    return predictedZoneTemp({
      zoneAirTempC: air.zoneAirTempC,
      supplyAirTempC: supply,
      minimumAirflowM3ps,
      requiredAirflowM3ps,
      targetZoneAirTempC,
    });
  if (air.zoneAirTempC >= targetZoneAirTempC) return { status: "not-overcooled" };
  if (requiredAirflowM3ps >= minimumAirflowM3ps) return { status: "at-required-airflow" };
  const ownRiseK = ((air.zoneAirTempC - air.dischargeAirTempC) * minimumAirflowM3ps) / requiredAirflowM3ps;
  return {
    status: "ok",
    zoneAirTempC: Math.min(targetZoneAirTempC, Math.max(air.zoneAirTempC, supply + ownRiseK)),
  };
}

function workingOf(input: PredictionInput, air: AirAtMinimum, state: "deadband" | "reheat", thenC: number): Working {
  const inReheat = state === "reheat";
  const measured = (symbol: string, label: string, value: number): Term => ({
    symbol,
    label,
    value,
    unit: "°C",
    origin: "measured",
    source: `mean of ${Math.round(air.hours)} h ${inReheat ? "in reheat" : "at minimum airflow"}`,
    href: input.readingsHref,
  });
  const given = (symbol: string, label: string, unit: string, value: SourcedValue & { working?: Working }): Term => ({
    symbol,
    label,
    unit,
    ...value,
  });
  const supply =
    air.supplyAirTempC === null
      ? given("T_sat", "supply air temperature", "°C", input.assumedSupplyAirTempC)
      : measured("T_sat", "supply air temperature", air.supplyAirTempC);
  return {
    formula: inReheat
      ? "T' = min(T_target, max(T_z, T_sat + (T_z - T_dis) · V_min / V_req))"
      : "T' = min(T_target, T_sat + (T_z - T_sat) · V_min / V_req)",
    terms: [
      given("T_target", "target zone air temperature", "°C", input.targetZoneAirTempC),
      supply,
      measured("T_z", "zone air temperature now", air.zoneAirTempC),
      ...(inReheat && air.dischargeAirTempC !== null
        ? [measured("T_dis", "discharge air temperature now", air.dischargeAirTempC)]
        : []),
      given("V_min", "minimum airflow now", "m³/s", input.minimumAirflowM3ps),
      given("V_req", "airflow that ventilation and the box's control need", "m³/s", input.requiredAirflowM3ps),
    ],
    result: { symbol: "T'", label: "zone air temperature at the lower minimum airflow", value: thenC, unit: "°C" },
    notes: [
      "The zone's own heat is taken as it is now. A warmer zone takes less heat from next door and from outdoors, so the true rise is somewhat smaller.",
      "The target is the most that is shown: above it the cooling setpoint takes over again.",
      "Ventilation must be checked by an engineer, zone and system, before any minimum airflow is changed.",
    ],
    source: inReheat
      ? "steady heat balance of the zone's air without the coil's heat, derived"
      : "steady heat balance of the zone's air with a constant load, derived",
  };
}
