import { POINT_NOTICES, type PointDraft } from "./point-draft";
import type { SectionReading } from "./read-section";

/**
 * Points of tables that stand under one another. Tables of one name and unit that follow each other in time (pages of
 * a report) add to one point; where they overlap they are two points, told apart by the number of the table.
 */
export function mergeSections(sections: readonly SectionReading[]): PointDraft[] {
  const merged = new Map<string, PointDraft>();
  for (const section of sections) {
    for (const draft of section.drafts) {
      const key = `${draft.name}\n${draft.unitAsWritten}\n${draft.kind}`;
      const known = merged.get(key);
      if (!known) {
        merged.set(key, draft);
      } else if (known.section !== draft.section && overlaps(known, draft)) {
        section.repeatedNames.add(draft.name);
        draft.name = `${draft.name} (table ${draft.section + 1})`;
        merged.set(`${key}\n${draft.section}`, draft);
      } else {
        known.chunks.push(...draft.chunks);
        known.presence.push(...draft.presence);
        for (const notice of POINT_NOTICES) known.lists[notice].addAll(draft.lists[notice]);
      }
    }
  }
  return [...merged.values()];
}

function overlaps(a: PointDraft, b: PointDraft): boolean {
  const [first, second] = [extent(a), extent(b)];
  return first !== null && second !== null && first.from < second.to && second.from < first.to;
}

function extent(draft: PointDraft): { from: number; to: number } | null {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const { ts } of draft.chunks) {
    for (const instant of ts) {
      from = Math.min(from, instant);
      to = Math.max(to, instant);
    }
  }
  return from <= to ? { from, to } : null;
}
