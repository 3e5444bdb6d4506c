import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Row 5: discharge air over 3 K warmer than supply air at a valve shut for half an hour or more. */
export function reheatValveLeaking(zone: ZoneEvidence): Cause | null {
  const { leaking: hours, valveShutWithDischarge, meanLeakDifferenceK } = zone.statistics.rules;
  if (!isWorthNaming(hours, valveShutWithDischarge)) return null;
  return {
    code: "reheat-valve-leaking",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["reheat-valve", "discharge-air-temp", "supply-air-temp", "airflow"],
      ...seenIn(zone, "leaking"),
      hours,
      ofHours: valveShutWithDischarge,
      meanDifferenceK: meanLeakDifferenceK,
    },
  };
}
