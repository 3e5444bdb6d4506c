import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Answered jumps below which it may be anything. Judgement, no source. */
const LEAST_JUMPS = 8;
/** Share of the starts or jumps looked at that the box must have answered with more air. Judgement, no source. */
const LEAST_SHARE = 0.5;
const YEAR_SECONDS = 365.25 * 86_400;

/**
 * Row 1: the reading jumps by 1 K and more when a heater comes on, and the box answers with more cold air. Heaters' own readings
 * tell when they came on; without them the zone must have heaters on the register whose hours allow for so many jumps (each
 * use lasting an hour or more).
 */
export function heaterWarmsThermostat(zone: ZoneEvidence): Cause | null {
  const { heaterJumps: jumps, heaterCount, heaterHoursPerYear } = zone;
  if (!jumps || jumps.answered < LEAST_JUMPS || jumps.answered < LEAST_SHARE * jumps.events) return null;
  const years = (zone.exposure.toUtcSeconds - zone.exposure.fromUtcSeconds) / YEAR_SECONDS;
  const perYear = jumps.answered / Math.max(years, 1 / 365);
  if (jumps.source === "trend" && (heaterCount === 0 || perYear > heaterHoursPerYear)) return null;
  return {
    code: "heater-warms-thermostat",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp", "airflow", ...(jumps.source === "own-readings" ? ["heater-power"] : [])],
      source: jumps.source,
      jumps: jumps.answered,
      ofEvents: jumps.events,
      meanRiseK: jumps.meanRiseK,
      airflowBeforeM3ps: jumps.meanAirflowBeforeM3ps,
      airflowAfterM3ps: jumps.meanAirflowAfterM3ps,
      heaters: heaterCount,
      heaterHoursPerYear,
      seenFromUtcSeconds: jumps.seen.fromUtcSeconds,
      seenToUtcSeconds: jumps.seen.toUtcSeconds,
      fromHour: jumps.seen.fromHour,
      untilHour: jumps.seen.untilHour,
    },
  };
}
