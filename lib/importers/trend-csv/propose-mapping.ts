import { BUILDING_KINDS } from "@/lib/trends/point-kind";
import { type AmbiguousKeys, ambiguousKeys, equipmentKey, spellingsOf } from "./equipment-key";
import { kindOfName } from "./kind-of-name";
import { nameWords } from "./name-words";
import type { Confidence, KindProposal } from "./propose-kind";
import { proposeMeter } from "./propose-meter";
import { indexZones, type KnownZone, matchZone, type ZoneIndex } from "./propose-zone";
import type { FileUnit } from "./trend-file";

/** `kind` null with `skip` true: leave the point out; with `skip` false: a person has to say. */
export type MappingProposal = KindProposal & { zoneId: number | null };

/** A point that has its zone already: by an earlier import, or as just entered. */
export type MappedPoint = { name: string; zoneId: number };

/** What proposals are made from, besides the name; made once for many names. */
export type ProposalBasis = { zones: ZoneIndex; siblings: ReadonlyMap<string, Sibling>; ambiguous: AmbiguousKeys };
type Sibling = { name: string; zoneId: number | null };

/** `names` are those of the file, `mapped` the building's points that have their zone. */
export function proposalBasis(
  zones: readonly KnownZone[],
  mapped: readonly MappedPoint[] = [],
  names: readonly string[] = [],
): ProposalBasis {
  const siblings = new Map<string, Sibling>();
  for (const { name, zoneId } of mapped) {
    const key = equipmentKey(name);
    if (!/\d/.test(key)) continue;
    const known = siblings.get(key);
    // Siblings in two zones prove nothing.
    siblings.set(key, known && known.zoneId !== zoneId ? { name, zoneId: null } : { name, zoneId });
  }
  const all = [...names, ...mapped.map((point) => point.name), ...zones.map((zone) => zone.code)];
  return { zones: indexZones(zones), siblings, ambiguous: ambiguousKeys(all) };
}

/** Proposes what a point is and which zone it belongs to, by its name and the building's zones alone. */
export const proposeMapping = (name: string, zones: readonly KnownZone[]): MappingProposal =>
  proposeByBasis(name, proposalBasis(zones));

/**
 * Proposes what a point is and which zone it belongs to. A person confirms; nothing is mapped without. Zone by: the
 * zone's code (or name) in the point's name, else equal letters and digits, else points of the same equipment that
 * have their zone already. A meter may be told by the unit of the file alone.
 */
export function proposeByBasis(name: string, basis: ProposalBasis, unit: FileUnit | null = null): MappingProposal {
  const proposal = proposeMeter(nameWords(name), unit) ?? kindOfName(name);
  if (proposal.skip || (proposal.kind !== null && BUILDING_KINDS.includes(proposal.kind)))
    return { ...proposal, zoneId: null };
  const place = placeOf(name, basis);
  return {
    ...proposal,
    zoneId: place.zoneId,
    confidence: lower(proposal.confidence, place.confidence),
    reason: place.reason ? `${proposal.reason}; ${place.reason}` : proposal.reason,
  };
}

type Place = { zoneId: number | null; confidence: Confidence; reason: string };

function placeOf(name: string, { zones, siblings, ambiguous }: ProposalBasis): Place {
  const match = matchZone(name, zones);
  if (match.status === "one" && match.confidence === "high")
    return { zoneId: match.id, confidence: "high", reason: "" };
  const spellings = spellingsOf(name, ambiguous);
  if (spellings.length > 0)
    return { zoneId: null, confidence: "low", reason: `${spellings.join(" and ")} both exist, choose the zone` };
  if (match.status === "one")
    return { zoneId: match.id, confidence: "medium", reason: "zone by equal letters and digits" };
  if (match.status === "several") return { zoneId: null, confidence: "low", reason: "several zones fit, choose one" };
  const sibling = siblings.get(equipmentKey(name));
  if (sibling && sibling.zoneId !== null)
    return { zoneId: sibling.zoneId, confidence: "medium", reason: `zone as ${sibling.name}, of the same equipment` };
  return { zoneId: null, confidence: "low", reason: "no zone of that code yet" };
}

const RANK: readonly Confidence[] = ["low", "medium", "high"];
const lower = (a: Confidence, b: Confidence): Confidence =>
  RANK[Math.min(RANK.indexOf(a), RANK.indexOf(b))] as Confidence;
