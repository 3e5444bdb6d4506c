import { isColdByRecord } from "./overcooled";
import { countReports, isCold } from "./report-counts";
import type { Cause, ZoneEvidence } from "./zone-evidence";
import { anyReport, reportBalance, speaksForZone } from "./zone-wide-reports";

/** Offset from a reference beyond which a reading is suspect [K] (reference D7, row 1). */
const SUSPECT_OFFSET_K = 1;
/** How much the offset must grow once the zones float for it not to be the day's setpoint fading [K]. Judgement, no source. */
const NOT_OWN_SETPOINT_K = 0.5;

/**
 * Row 1, by the neighbours: the reading stands over 1 K off the median of the other zones in unoccupied hours with
 * little airflow, and stands further off in that direction than by day (a zone merely kept warmer or colder drifts
 * back to the others at night, a wrong sensor drifts away). A calibrated logger has to confirm it.
 */
export function sensorBias(zone: ZoneEvidence): Cause | null {
  const { offset } = zone;
  if (!offset || offset.floatOffsetK === null) return null;
  const float = offset.floatOffsetK;
  const byDay = offset.occupiedOffsetK ?? 0;
  if (Math.abs(float) <= SUSPECT_OFFSET_K) return null;
  if ((float - byDay) * Math.sign(float) < NOT_OWN_SETPOINT_K) return null;
  return {
    code: "sensor-bias",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      floatOffsetK: float,
      occupiedOffsetK: offset.occupiedOffsetK,
      hours: offset.floatHours,
      neighbours: offset.neighbours,
      comparedWith: offset.group,
      heaters: zone.heaterCount,
    },
  };
}

/** Float offset at which neighbours alone make a sensor the first suspect [K]; below it people must agree. Judgement. */
const PLAIN_OFFSET_K = 1.5;
/** Chance of the reports by luck at which they agree with what the neighbours showed already. Judgement, no source. */
const AGREEING_CHANCE = 0.1;

/** Heaters in a zone that does not read cold from which more than one person feels colder than it reads. Judgement, no source. */
const AGREEING_HEATERS = 2;

/**
 * Whether a sensor that neighbours make suspect is to be seen to first: it stands far off, or people show what it hides:
 * by their reports of any season (cold where it reads high, hot where it reads low), or by their heaters where it reads
 * high and not cold.
 */
export function isSensorFirst(zone: ZoneEvidence, bias: Cause): boolean {
  const float = Number(bias.evidence.floatOffsetK);
  if (Math.abs(float) >= PLAIN_OFFSET_K) return true;
  if (float > 0 && zone.heaterCount >= AGREEING_HEATERS && !isColdByRecord(zone)) return true;
  const felt = reportBalance(zone, float > 0 ? "cold" : "hot", { own: anyReport, opposite: anyReport });
  return speaksForZone(felt, AGREEING_CHANCE);
}

/**
 * Row 1, by the people: cold reports that speak for the zone and came while it read at or above the target. The
 * sensor may be wrong, or the desks colder than the sensor's place (draught, cold glass).
 */
export function coldReportsAtTarget(zone: ZoneEvidence): Cause | null {
  const target = zone.exposure.targetZoneAirTempC;
  const cold = countReports(zone.reports, isCold);
  const atTarget = reportBalance(zone, "cold", {
    own: (each) => each.zoneAirTempC !== null && each.zoneAirTempC >= target,
    opposite: anyReport,
  });
  if (atTarget.count.reports * 2 < cold.reports || !speaksForZone(atTarget)) return null;
  return {
    code: "cold-reports-at-target",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      reports: atTarget.count.reports,
      ofReports: cold.reports,
      hotReports: atTarget.opposite,
      desks: atTarget.count.desks,
      targetC: target,
    },
  };
}
