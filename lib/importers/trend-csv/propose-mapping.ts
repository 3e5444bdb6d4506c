import { BUILDING_KINDS, type PointKind } from "@/lib/trends/point-kind";
import { nameWords } from "./name-words";
import { type Confidence, type KindProposal, proposeKind } from "./propose-kind";

export type KnownZone = { id: number; code: string; name: string };

/** `kind` null with `skip` true: leave the point out; with `skip` false: a person has to say. */
export type MappingProposal = KindProposal & { zoneId: number | null };

/** Words that say what a point measures or does; the rest of a name is the equipment or zone it belongs to. */
const ROLE_WORDS = new Set(
  "zn znt zt rmt temp tmp temperature temperatur t sp stpt setpt setpoint spt set point csp hsp clg cool cooling htg heat heating reheat rht act actual active eff effective cur current occ occupied occupancy unocc unoccupied ngt night sup supply da dat discharge disch sa sat dis air flow flo airflow cfm dpr damper dmpr vlv valve o c out output cmd command pos position avg average space spc sensor value mode status sts stat pct pv raumtemperatur sollwert".split(
    " ",
  ),
);
const PLACE_WORDS = new Set(["zone", "rm", "room", "raum"]);

/**
 * Proposes what a point is and which zone it belongs to, by its name alone. A person confirms; nothing is mapped
 * without. Zone by: the zone's code (or name) standing whole in the point's name, else equal letters and digits.
 */
export function proposeMapping(name: string, zones: readonly KnownZone[]): MappingProposal {
  const proposal = proposeKind(name);
  if (proposal.kind === null || BUILDING_KINDS.includes(proposal.kind)) return { ...proposal, zoneId: null };
  const match = matchZone(name, zones);
  if (match.status === "one")
    return { ...proposal, zoneId: match.id, confidence: lower(proposal.confidence, match.confidence) };
  const reason =
    match.status === "several"
      ? `${proposal.reason}; several zones fit, choose one`
      : `${proposal.reason}; no zone of that code yet`;
  return { ...proposal, zoneId: null, reason };
}

const RANK: readonly Confidence[] = ["low", "medium", "high"];
const lower = (a: Confidence, b: Confidence): Confidence =>
  RANK[Math.min(RANK.indexOf(a), RANK.indexOf(b))] as Confidence;

type ZoneMatch = { status: "one"; id: number; confidence: Confidence } | { status: "several" } | { status: "none" };

function matchZone(name: string, zones: readonly KnownZone[]): ZoneMatch {
  const words = nameWords(name);
  let best: { id: number; length: number }[] = [];
  for (const zone of zones) {
    const length = Math.max(standsIn(words, nameWords(zone.code)), standsIn(words, nameWords(zone.name)));
    if (length === 0 || length < (best[0]?.length ?? 0)) continue;
    best = length === best[0]?.length ? [...best, { id: zone.id, length }] : [{ id: zone.id, length }];
  }
  if (best.length === 1) return { status: "one", id: (best[0] as { id: number }).id, confidence: "high" };
  if (best.length > 1) return { status: "several" };
  const key = equipmentKey(name);
  if (!/\d/.test(key)) return { status: "none" };
  const alike = zones.filter(
    ({ code }) => equipmentKey(code) === key || (/^[\d\W_]+$/.test(code) && digitsOf(code) === digitsOf(key)),
  );
  const exact = alike.filter((zone) => equipmentKey(zone.code) === key);
  const chosen = exact.length > 0 ? exact : alike;
  if (chosen.length === 1) return { status: "one", id: (chosen[0] as KnownZone).id, confidence: "medium" };
  return chosen.length > 1 ? { status: "several" } : { status: "none" };
}

const digitsOf = (text: string): string => text.replace(/\D/g, "");

/** Length of `code` (in words, at least one of them a number) where it stands whole in `words`, else 0: VAV-2 is not in VAV-2-14. */
function standsIn(words: readonly string[], code: readonly string[]): number {
  if (code.length === 0 || !code.some((word) => /^\d+$/.test(word))) return 0;
  const isNumber = (word: string | undefined): boolean => word !== undefined && /^\d+$/.test(word);
  for (let at = 0; at + code.length <= words.length; at++) {
    if (!code.every((word, i) => sameWord(words[at + i] as string, word))) continue;
    if (isNumber(words[at + code.length]) && isNumber(code.at(-1))) continue;
    if (isNumber(words[at - 1]) && isNumber(code[0])) continue;
    return code.length;
  }
  return 0;
}

/** Equal but for leading zeros: zone 03 is zone 3. */
const sameWord = (a: string, b: string): boolean =>
  a === b || (/^\d+$/.test(a) && /^\d+$/.test(b) && Number(a) === Number(b));

/** Words of a name less its role, run together: `VAV-2-14_ZN-T` and `VAV_214 ZN-T` both give `vav214`. */
export function equipmentKey(name: string): string {
  return equipmentWords(name).join("");
}

function equipmentWords(name: string): string[] {
  const words = nameWords(name);
  return words.filter((word, i) => {
    const isNumber = /^\d/.test(words[i + 1] ?? "");
    if (PLACE_WORDS.has(word) || word === "zn") return isNumber;
    return !ROLE_WORDS.has(word) || (isNumber && word.length === 1 && i === 0);
  });
}

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
