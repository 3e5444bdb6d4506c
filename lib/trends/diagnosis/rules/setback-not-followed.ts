import type { Cause, ZoneEvidence } from "../zone-evidence";

/** A setback below this is none [K]; neighbours must show at least the second figure. Judgement, no source. */
const NO_SETBACK_K = 0.3;
const NEIGHBOUR_SETBACK_K = 1;

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
