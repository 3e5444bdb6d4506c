import { isColdByRecord } from "./overcooled";
import type { Cause, ZoneEvidence } from "./zone-evidence";
import { anyReport, reportBalance, speaksForZone } from "./zone-wide-reports";

/** Float offset at which neighbours alone make a sensor the first suspect [K]; below it people must agree. Judgement. */
const PLAIN_OFFSET_K = 1.5;
/** Chance of the reports by luck at which they agree with what the neighbours showed already. Judgement, no source. */
const AGREEING_CHANCE = 0.1;

/** Heaters in a zone that does not read cold from which more than one person feels colder than it reads. Judgement, no source. */
const AGREEING_HEATERS = 2;

/**
 * Whether a sensor that neighbours make suspect is to be seen to first: it stands far off, or people show what it hides:
 * by their reports of any season (cold where it reads high, hot where it reads low), or by their heaters where it reads
 * high and not cold.
 */
export function isSensorFirst(zone: ZoneEvidence, bias: Cause): boolean {
  const float = Number(bias.evidence.floatOffsetK);
  if (Math.abs(float) >= PLAIN_OFFSET_K) return true;
  if (float > 0 && zone.heaterCount >= AGREEING_HEATERS && !isColdByRecord(zone)) return true;
  const felt = reportBalance(zone, float > 0 ? "cold" : "hot", { own: anyReport, opposite: anyReport });
  return speaksForZone(felt, AGREEING_CHANCE);
}
