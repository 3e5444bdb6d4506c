import type { Finding } from "@/lib/findings/finding";
import { stepHours } from "./grid";
import type { ZoneExposure } from "./zone-exposure";
import type { ZoneGrids } from "./zone-grids";

/** Least record from which a year may be inferred (reference Q8). */
export const LEAST_RECORD_DAYS = 14;
/** Share of occupied hours without data, or with no setpoint beside the data, that is worth a caution. Judgement. */
const GAP_CAUTION_FRACTION = 0.05;

/** What the record of a zone lacks, as findings. `record-too-short` and `no-cooling-season` stop any annual figure. */
export function exposureFindings(
  exposure: ZoneExposure,
  record: { recordedHours: number; seasonUnknownHours: number; grids: ZoneGrids },
): Finding[] {
  const findings: Finding[] = [];
  const days = record.recordedHours / 24;
  if (days < LEAST_RECORD_DAYS) {
    findings.push({
      code: "record-too-short",
      severity: "disqualifies",
      evidence: { recordedDays: days, neededDays: LEAST_RECORD_DAYS },
    });
  }
  if (exposure.occupiedHours > 0 && exposure.coolingSeasonHours === 0) {
    findings.push({
      code: "no-cooling-season",
      severity: "disqualifies",
      evidence: { occupiedHours: exposure.occupiedHours },
    });
  }
  const wanted = exposure.occupiedHours + exposure.occupiedHoursWithoutData;
  if (exposure.occupiedHoursWithoutData > GAP_CAUTION_FRACTION * wanted) {
    findings.push({
      code: "zone-air-gaps",
      severity: "caution",
      evidence: { gapHours: exposure.occupiedHoursWithoutData, occupiedHours: wanted },
    });
  }
  if (!record.grids.outdoorAirTempC) {
    findings.push({ code: "no-outdoor-record", severity: "note", evidence: {} });
  } else if (record.seasonUnknownHours > 0) {
    findings.push({
      code: "outdoor-gaps",
      severity: record.seasonUnknownHours > GAP_CAUTION_FRACTION * wanted ? "caution" : "note",
      evidence: { leftOutHours: record.seasonUnknownHours, occupiedHours: exposure.occupiedHours },
    });
  }
  const { airflow, reheatValve, coolingStage } = exposure.hasTrend;
  // A cooling stage tells by itself what a unit that serves the zone alone does.
  const missing = coolingStage ? [] : [...(airflow ? [] : ["airflow"]), ...(reheatValve ? [] : ["reheat-valve"])];
  if (missing.length > 0) {
    findings.push({
      code: "state-points-missing",
      severity: "caution",
      evidence: { points: missing, undeterminedHours: exposure.byState.undetermined.hours },
    });
  }
  const setpointHours = hoursWithBoth(record.grids);
  if (exposure.hasTrend.coolingSetpoint && setpointHours < (1 - GAP_CAUTION_FRACTION) * exposure.occupiedHours) {
    findings.push({
      code: "setpoint-record-short",
      severity: "caution",
      evidence: { setpointHours, occupiedHours: exposure.occupiedHours },
    });
  }
  return findings;
}

/** Occupied hours with zone air and a cooling setpoint beside it. */
function hoursWithBoth(grids: ZoneGrids): number {
  const setpoint = grids.coolingSetpointC;
  if (!setpoint) return 0;
  let both = 0;
  for (let i = 0; i < setpoint.length; i++) {
    if (grids.occupied[i] === 1 && !Number.isNaN((grids.zoneAirTempC[i] as number) + (setpoint[i] as number))) both++;
  }
  return both * stepHours(grids.grid);
}
