import { BUILDING_KINDS, type PointKind } from "@/lib/trends/point-kind";
import { equipmentWords } from "./equipment-key";
import { proposeKind } from "./propose-kind";

export type ProposedZone = { code: string; points: string[] };

/**
 * Zones that a set of point names speaks of, for a building that does not have them yet: one a box or room, with the
 * points that belong to it, in the order of first mention. Points of air handlers and outdoor air propose none.
 */
export function proposedZoneCodes(names: readonly string[]): ProposedZone[] {
  const zones = new Map<string, ProposedZone>();
  for (const name of names) {
    const { kind } = proposeKind(name);
    if (kind === null || (BUILDING_KINDS as readonly PointKind[]).includes(kind)) continue;
    const words = equipmentWords(name);
    const key = words.join("");
    if (!/\d/.test(key)) continue;
    const code = codeOf(words);
    const known = zones.get(key);
    if (!known) zones.set(key, { code, points: [name] });
    else {
      known.points.push(name);
      // The spelling with more parts says more: VAV-2-14 rather than VAV-214.
      if (code.split("-").length > known.code.split("-").length) known.code = code;
    }
  }
  return [...zones.values()];
}

const codeOf = (words: readonly string[]): string => words.map((word) => word.toUpperCase()).join("-");
