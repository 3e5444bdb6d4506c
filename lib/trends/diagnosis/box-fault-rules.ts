import { isWorthNaming } from "./worth-naming";
import type { Cause, ZoneEvidence } from "./zone-evidence";

/** Row 4: the damper stands at its minimum and over 1.5 of the minimum airflow passes. */
export function airflowAboveCommand(zone: ZoneEvidence): Cause | null {
  const { airflowAboveCommand: hours, observed } = zone.statistics.rules;
  if (!isWorthNaming(hours, observed)) return null;
  return {
    code: "airflow-above-command",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["damper-position", "airflow", "zone-air-temp", "cooling-setpoint"],
      hours,
      ofHours: observed,
      minimumAirflowM3ps: zone.limits.minimumAirflowM3ps,
      minimumAirflowOrigin: zone.minimumAirflowOrigin,
      meanAirflowM3ps: zone.exposure.byState.fault.meanAirflowM3ps,
    },
  };
}

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
      hours,
      ofHours: valveShutWithDischarge,
      meanDifferenceK: meanLeakDifferenceK,
    },
  };
}

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
      hours,
      ofHours: valveFull,
    },
  };
}
