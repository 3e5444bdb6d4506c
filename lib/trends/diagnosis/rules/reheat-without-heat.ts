import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Row 6: the valve is fully open, no heat arrives and the zone sinks below its heating setpoint. */
export function reheatWithoutHeat(zone: ZoneEvidence): Cause | null {
  const { reheatWithoutHeat: hours, valveFull } = zone.statistics.rules;
  if (!isWorthNaming(hours, valveFull)) return null;
  return {
    code: "reheat-without-heat",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["reheat-valve", "discharge-air-temp", "supply-air-temp", "zone-air-temp", "heating-setpoint"],
      ...seenIn(zone, "reheatWithoutHeat"),
      hours,
      ofHours: valveFull,
    },
  };
}
