import { isOvercooled, meanShortfallK } from "./overcooled";
import { countReports, isCold } from "./report-counts";
import { isWorthNaming } from "./worth-naming";
import type { Cause, ZoneEvidence } from "./zone-evidence";

/** Neighbours whose setpoint fell within this of the zone's make it a decision for the building [s]. Judgement, no source. */
const SAME_TIME_SECONDS = 14 * 86400;
/** A setback below this is none [K]; neighbours must show at least the second figure. Judgement, no source. */
const NO_SETBACK_K = 0.3;
const NEIGHBOUR_SETBACK_K = 1;
/** Gap of the setpoints below which reheat and cooling fight [K] (reference D7, row 12: 5 °F). */
const DEADBAND_K = 2.8;
/** Alternations per 100 occupied hours worth naming. Judgement, no source. */
const ALTERNATIONS_PER_100_H = 2;

/** Row 2: the occupied cooling setpoint fell by 0.8 K or more at some date and stayed, and the other zones' did not. */
export function setpointSteppedDown(zone: ZoneEvidence): Cause | null {
  const step = zone.statistics.coolingSetpoint?.stepDown;
  if (!step) return null;
  const alike = zone.neighbours.stepDownsUtcSeconds.filter(
    (each) => Math.abs(each - step.atUtcSeconds) <= SAME_TIME_SECONDS,
  ).length;
  if (zone.neighbours.zones > 0 && alike * 2 >= zone.neighbours.zones) return null;
  return {
    code: "setpoint-stepped-down",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["cooling-setpoint"],
      sinceUtcSeconds: step.atUtcSeconds,
      beforeC: step.beforeC,
      afterC: step.afterC,
      weeks: zone.statistics.coolingSetpoint?.weeks.length ?? 0,
      neighbours: zone.neighbours.zones,
      neighboursAlike: alike,
    },
  };
}

/** Row 2: the cooling setpoint is not raised in unoccupied hours while the other zones' are: a hold or local override. */
export function setbackNotFollowed(zone: ZoneEvidence): Cause | null {
  const own = zone.statistics.coolingSetbackK;
  const others = zone.neighbours.medianCoolingSetbackK;
  if (own === null || others === null || own >= NO_SETBACK_K || others < NEIGHBOUR_SETBACK_K) return null;
  return {
    code: "setback-not-followed",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["cooling-setpoint"],
      ownSetbackK: own,
      neighbourSetbackK: others,
      neighbours: zone.neighbours.zones,
      occupiedSetpointC: zone.statistics.coolingSetpoint?.occupiedMedianC ?? null,
    },
  };
}

/** Row 12: setpoints under 2.8 K apart, and the zone goes from reheat to cooling or back within an hour. */
export function narrowDeadband(zone: ZoneEvidence): Cause | null {
  const { medianDeadbandK, alternations, observed } = zone.statistics.rules;
  if (medianDeadbandK === null || medianDeadbandK >= DEADBAND_K) return null;
  if (alternations < 5 || alternations * 100 < ALTERNATIONS_PER_100_H * observed) return null;
  return {
    code: "narrow-deadband",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["cooling-setpoint", "heating-setpoint", "reheat-valve", "airflow"],
      deadbandK: medianDeadbandK,
      neededK: DEADBAND_K,
      alternations,
      ofHours: observed,
    },
  };
}

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
      trends: ["zone-air-temp", "cooling-setpoint", "airflow", "reheat-valve"],
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
