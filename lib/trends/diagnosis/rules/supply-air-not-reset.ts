import type { Evidence } from "@/lib/findings/finding";
import { HOT_FROM_C, MILD_BELOW_C } from "../../supply-air-reset";
import type { Cause, ZoneEvidence } from "../zone-evidence";
import { minimumAirflowOvercooling } from "./minimum-airflow-overcooling";
import { reheatAtMinimum } from "./reheat-at-minimum";
import { isHeldForHumidity } from "./supply-air-held-for-humidity";

/** Supply air this cold in mild weather is not reset [°C] (reference D7, row 10: 12 to 13 °C, and half a kelvin of the sensor). */
const COLD_SUPPLY_C = 13.5;
/** Supply air that moves by less than this counts as constant [K]. Judgement, no source. */
const CONSTANT_K = 1;
/** Mild hours from which the supply air is known. Judgement, no source. */
const LEAST_HOURS = 20;
/** "Most zones of one air handler" (reference D7, row 10), and the zones from which "most" means anything. Judgement, no source. */
const MOST = 0.5;
const LEAST_ZONES = 3;

/**
 * Row 10: most zones of one air handler sit at their minimum airflow or reheat it, and its supply air stays at 12 to 13 °C in
 * mild weather. Zones that are short of air are named: one of them may hold the supply air down for all.
 */
export function supplyAirNotReset(zone: ZoneEvidence): Cause | null {
  const evidence = coldSupplyEvidence(zone);
  if (!evidence) return null;
  const heldForHumidity = isHeldForHumidity(zone);
  return {
    code: "supply-air-not-reset",
    severity: heldForHumidity ? "note" : "caution",
    evidence: { ...evidence, heldForHumidity },
  };
}

/** What rows 10 and 11 have in common: null where the zone, its air handler or its supply air does not show it. */
export function coldSupplyEvidence(zone: ZoneEvidence): Evidence | null {
  const { airHandler } = zone;
  const supply = zone.statistics.supplyAir;
  if (!airHandler || !supply || supply.mildMedianC === null || supply.mildSpreadK === null) return null;
  if (!reheatAtMinimum(zone) && !minimumAirflowOvercooling(zone)) return null;
  if (airHandler.zones < LEAST_ZONES || airHandler.zonesAtMinimum.length <= MOST * airHandler.zones) return null;
  if (supply.mildHours < LEAST_HOURS || supply.mildMedianC > COLD_SUPPLY_C || supply.mildSpreadK > CONSTANT_K)
    return null;
  if (supply.hotMedianC !== null && supply.mildMedianC - supply.hotMedianC > CONSTANT_K) return null;
  return {
    zone: zone.zoneCode,
    trends: ["supply-air-temp", "outdoor-air-temp", "airflow", "reheat-valve"],
    airHandler: airHandler.name,
    zones: airHandler.zones,
    zonesAtMinimum: airHandler.zonesAtMinimum,
    zonesShortOfAir: airHandler.zonesShortOfAir,
    hours: supply.mildHours,
    mildBelowC: MILD_BELOW_C,
    mildMedianC: supply.mildMedianC,
    mildSpreadK: supply.mildSpreadK,
    hotFromC: HOT_FROM_C,
    hotMedianC: supply.hotMedianC,
    humidityHours: supply.humidityHours,
    humidHours: supply.humidHours,
    medianDewPointC: supply.medianDewPointC,
  };
}
