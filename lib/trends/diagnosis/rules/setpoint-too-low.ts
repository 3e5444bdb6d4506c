import { isOvercooled, meanShortfallK } from "../overcooled";
import { countReports, isCold } from "../report-counts";
import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Row 13: a cold zone held by a cooling setpoint below the target: within 0.5 K of it, airflow above minimum, valve closed. */
export function setpointTooLow(zone: ZoneEvidence): Cause | null {
  const { heldByCoolingSetpoint, observed } = zone.statistics.rules;
  const setpointC = zone.statistics.coolingSetpoint?.occupiedMedianC ?? null;
  const cold = countReports(zone.reports, isCold);
  if (setpointC === null || setpointC >= zone.exposure.targetZoneAirTempC) return null;
  if (!isWorthNaming(heldByCoolingSetpoint, observed)) return null;
  if (!isOvercooled(zone)) return null;
  return {
    code: "setpoint-too-low",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: zone.singleZone
        ? ["zone-air-temp", "cooling-setpoint", "cooling-stage"]
        : ["zone-air-temp", "cooling-setpoint", "airflow", "reheat-valve"],
      ...seenIn(zone, "heldByCoolingSetpoint"),
      hours: heldByCoolingSetpoint,
      ofHours: observed,
      setpointC,
      targetC: zone.exposure.targetZoneAirTempC,
      meanShortfallK: meanShortfallK(zone),
      coldReports: cold.reports,
      coldDesks: cold.desks,
      heaters: zone.heaterCount,
    },
  };
}
