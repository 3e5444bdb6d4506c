import type { Evidence } from "@/lib/findings/finding";
import type { RuleSign } from "../rule-hours";
import type { ZoneEvidence } from "./zone-evidence";

/** When a sign was seen, as evidence: first and last instant, and the local hours that hold most of it. */
export function seenIn(zone: ZoneEvidence, sign: RuleSign): Evidence {
  const span = zone.statistics.rules.seen[sign];
  return span
    ? {
        seenFromUtcSeconds: span.fromUtcSeconds,
        seenToUtcSeconds: span.toUtcSeconds,
        fromHour: span.fromHour,
        untilHour: span.untilHour,
      }
    : {};
}
