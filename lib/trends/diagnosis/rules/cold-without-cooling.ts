import { isColdByRecord } from "../overcooled";
import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/**
 * Row 16's counterpart: a zone with a unit of its own is 1 K and more below the target although its cooling has not run for an
 * hour and more: something else keeps it cold. Common practice, no source.
 */
export function coldWithoutCooling(zone: ZoneEvidence): Cause | null {
  const { coldWithoutCooling: hours, observed } = zone.statistics.rules;
  if (!isWorthNaming(hours, observed) || !isColdByRecord(zone)) return null;
  return {
    code: "cold-without-cooling",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["cooling-stage", "zone-air-temp"],
      ...seenIn(zone, "coldWithoutCooling"),
      hours,
      ofHours: observed,
      targetC: zone.exposure.targetZoneAirTempC,
      meanZoneAirC: zone.exposure.byState.deadband.meanZoneAirTempC,
    },
  };
}
