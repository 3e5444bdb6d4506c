import type { SeasonRecord } from "@/lib/comfort-reports/both-sides/season-record";
import { LEAST_PEOPLE } from "@/lib/comfort-reports/disclosure/disclose-counts";

/**
 * Whether a document that is handed on must leave out what reports are expected in zones: when some people have reported
 * there, and fewer than a publication asks for. Copies frozen before people were counted are printed as they were issued.
 */
export function areReportsWithheld(
  record: SeasonRecord | null | undefined,
  levers: readonly { zoneId: number }[],
): boolean {
  const inProposal = new Set(levers.map(({ zoneId }) => zoneId));
  const zones = (record?.zones ?? []).filter(({ zoneId }) => inProposal.has(zoneId));
  if (zones.some(({ people }) => people === undefined)) return false;
  const people = zones.reduce((sum, zone) => sum + (zone.people ?? 0), 0);
  return people > 0 && people < LEAST_PEOPLE.publication;
}
