import type { Cause, ZoneEvidence } from "../zone-evidence";

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
