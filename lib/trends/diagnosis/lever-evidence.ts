import type { Evidence } from "@/lib/findings/finding";
import { meanShortfallK } from "./overcooled";
import type { Cause, CauseCode, ZoneEvidence } from "./zone-evidence";

export type Lever = "setpoint" | "minimum-airflow";

/** Causes that speak for a lever with hours of their own. */
const DETAILED: Record<Lever, readonly CauseCode[]> = {
  setpoint: ["setpoint-stepped-down", "setback-not-followed", "setpoint-too-low", "short-compressor-runs"],
  "minimum-airflow": ["reheat-at-minimum", "minimum-airflow-overcooling"],
};

/** Share of the degree-hours below which one of two levers gets no line of its own. Judgement, no source. */
const LEAST_SHARE = 0.1;

/** The levers of two whose states hold a share of the degree-hours worth a line; both where neither does. */
export function leversWorthALine(zone: ZoneEvidence, levers: readonly Lever[]): readonly Lever[] {
  const { byState } = zone.exposure;
  const totalKh = Object.values(byState).reduce((sum, each) => sum + each.overcoolingKh, 0);
  const ownKh = (lever: Lever): number =>
    lever === "setpoint"
      ? byState.cooling.overcoolingKh
      : byState.deadband.overcoolingKh + byState.reheat.overcoolingKh;
  const worth = levers.filter((lever) => ownKh(lever) >= LEAST_SHARE * totalKh);
  return worth.length > 0 ? worth : levers;
}

/**
 * What a lever rests on where no detailed rule speaks for it: the hours and degree-hours by state that chose it
 * (zone verdict of reference D7). Null where a cause that is named already carries its evidence.
 */
export function leverEvidence(zone: ZoneEvidence, lever: Lever, causes: readonly Cause[]): Cause | null {
  if (causes.some(({ code }) => DETAILED[lever].includes(code))) return null;
  return {
    code: lever === "setpoint" ? "degree-hours-in-cooling" : "degree-hours-at-minimum",
    severity: "caution",
    evidence: degreeHoursByState(zone),
  };
}

function degreeHoursByState(zone: ZoneEvidence): Evidence {
  const { byState, coolingSeasonHours, targetZoneAirTempC } = zone.exposure;
  const { cooling, deadband, reheat } = byState;
  const totalKh = Object.values(byState).reduce((sum, each) => sum + each.overcoolingKh, 0);
  return {
    zone: zone.zoneCode,
    trends: ["zone-air-temp", "airflow", "reheat-valve"],
    targetC: targetZoneAirTempC,
    setpointC: zone.statistics.coolingSetpoint?.occupiedMedianC ?? null,
    meanShortfallK: meanShortfallK(zone),
    ofHours: coolingSeasonHours,
    coolingHours: cooling.hours,
    coolingKh: cooling.overcoolingKh,
    deadbandHours: deadband.hours,
    deadbandKh: deadband.overcoolingKh,
    reheatHours: reheat.hours,
    reheatKh: reheat.overcoolingKh,
    totalKh,
  };
}
