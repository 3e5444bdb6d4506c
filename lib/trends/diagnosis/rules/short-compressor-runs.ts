import { SHORT_RUN_MINUTES } from "../../compressor-runs";
import { isOvercooled, meanShortfallK } from "../overcooled";
import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Runs below which it may be chance. Judgement, no source. */
const LEAST_RUNS = 20;

/**
 * Row 16: a cold zone with a unit of its own, held about its cooling setpoint by a compressor that usually runs for less than
 * ten minutes: the setpoint governs, and the unit overshoots it.
 */
export function shortCompressorRuns(zone: ZoneEvidence): Cause | null {
  const { compressorRuns: runs, rules, coolingSetpoint } = zone.statistics;
  if (!runs || runs.runs < LEAST_RUNS || runs.medianMinutes >= SHORT_RUN_MINUTES) return null;
  if (!isWorthNaming(rules.heldByCoolingSetpoint, rules.observed) || !isOvercooled(zone)) return null;
  return {
    code: "short-compressor-runs",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["cooling-stage", "zone-air-temp", "cooling-setpoint"],
      ...seenIn(zone, "heldByCoolingSetpoint"),
      hours: rules.heldByCoolingSetpoint,
      ofHours: rules.observed,
      runs: runs.runs,
      shortRuns: runs.shortRuns,
      medianMinutes: runs.medianMinutes,
      leastMinutes: SHORT_RUN_MINUTES,
      setpointC: coolingSetpoint?.occupiedMedianC ?? null,
      targetC: zone.exposure.targetZoneAirTempC,
      meanShortfallK: meanShortfallK(zone),
    },
  };
}
