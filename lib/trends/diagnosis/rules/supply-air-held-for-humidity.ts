import { HUMID_ABOVE_PCT, HUMID_DEW_POINT_C } from "../../supply-air-reset";
import type { Cause, ZoneEvidence } from "../zone-evidence";
import { coldSupplyEvidence } from "./supply-air-not-reset";

/** Share of the mild hours with humidity recorded in which it must be humid. Judgement, no source. */
const HUMID_SHARE = 0.1;

/** Whether the air was humid enough in mild weather for cold supply air to be wanted (reference D7, row 11). */
export function isHeldForHumidity(zone: ZoneEvidence): boolean {
  const supply = zone.statistics.supplyAir;
  return supply !== null && supply.humidHours > 0 && supply.humidHours >= HUMID_SHARE * supply.humidityHours;
}

/** Row 11: as row 10, and the room or return air is above 60 % relative humidity or a dew point of 15 °C: the cold dries it. */
export function supplyAirHeldForHumidity(zone: ZoneEvidence): Cause | null {
  if (!isHeldForHumidity(zone)) return null;
  const evidence = coldSupplyEvidence(zone);
  return (
    evidence && {
      code: "supply-air-held-for-humidity",
      severity: "note",
      evidence: {
        ...evidence,
        trends: ["relative-humidity", "supply-air-temp", "outdoor-air-temp"],
        humidAbovePct: HUMID_ABOVE_PCT,
        humidDewPointC: HUMID_DEW_POINT_C,
      },
    }
  );
}
