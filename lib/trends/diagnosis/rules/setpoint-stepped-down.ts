import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Neighbours whose setpoint fell within this of the zone's make it a decision for the building [s]. Judgement, no source. */
const SAME_TIME_SECONDS = 14 * 86400;

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
