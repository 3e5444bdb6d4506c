import { z } from "zod";
import { POINT_KINDS, type PointKind } from "@/lib/trends/point-kind";
import type { Settlement } from "../mapping-profiles/settle";
import type { MappingLine } from "./mapping-lines";
import type { PointChoice } from "./run-input";

/** A point is left out for good, or this time only and asked about again. */
export const LEAVE_OUT = "skip";
export const ASK_AGAIN = "ask-again";

/** A row of the mapping page as it is entered: it may be half done. */
export const mappingEntry = z.object({
  what: z.union([z.enum(POINT_KINDS), z.enum([LEAVE_OUT, ASK_AGAIN, ""])]),
  zoneId: z.number().int().nullable(),
  unit: z.string().nullable(),
  continues: z.string().nullable().default(null),
});
export type MappingEntry = z.output<typeof mappingEntry>;

/** Where what stands in a row comes from. `profile-differs`: a profile says it, but the point has changed since. */
export type EntryOrigin = "entered" | "profile" | "profile-differs" | "known" | "left-out-before" | "proposal" | "open";

export type LineState = { entry: MappingEntry; origin: EntryOrigin };

/** Origins that settle a point without a person's look at it. */
const SETTLED: readonly EntryOrigin[] = ["entered", "profile", "known", "left-out-before"];
export const isSettled = ({ origin, entry }: LineState): boolean => SETTLED.includes(origin) && entry.what !== "";

/** What stands in a line: as entered, else by profile, else as before, else as proposed. */
export function lineStateOf(
  line: MappingLine,
  entered: MappingEntry | undefined,
  profile: { choice: PointChoice; differs: boolean } | null,
): LineState {
  if (entered) return { entry: entered, origin: "entered" };
  if (profile) {
    const asksAgain = profile.choice.skip && profile.choice.undecided === true;
    if (!asksAgain)
      return { entry: entryOf(profile.choice, line), origin: profile.differs ? "profile-differs" : "profile" };
  }
  const { known, proposal, leftOutBefore, unitAsk } = line;
  const unit = unitAsk?.choices.find((each) => each === known?.fileUnit) ?? unitAsk?.proposal ?? null;
  const entry = (what: MappingEntry["what"], zoneId: number | null): MappingEntry => ({
    what,
    zoneId,
    unit,
    continues: null,
  });
  if (leftOutBefore) return { entry: entry(LEAVE_OUT, null), origin: "left-out-before" };
  if (known) return { entry: entry(known.kind, known.zoneId), origin: unitAsk && unit === null ? "proposal" : "known" };
  if (proposal.skip) return { entry: entry(LEAVE_OUT, null), origin: "proposal" };
  return { entry: entry(proposal.kind ?? "", proposal.zoneId), origin: proposal.kind ? "proposal" : "open" };
}

function entryOf(choice: PointChoice, { unitAsk }: MappingLine): MappingEntry {
  if (choice.skip) return { what: choice.undecided ? ASK_AGAIN : LEAVE_OUT, zoneId: null, unit: null, continues: null };
  const unit = choice.unit ?? null;
  const fits = unitAsk !== null && unit !== null && unitAsk.choices.includes(unit);
  return {
    what: choice.kind,
    zoneId: choice.zoneId,
    unit: fits ? unit : (unitAsk?.proposal ?? null),
    continues: choice.continues ?? null,
  };
}

/** The entry as a choice, or null when it does not say yet what the point is. */
export function choiceOfEntry({ what, zoneId, unit, continues }: MappingEntry): PointChoice | null {
  if (what === "") return null;
  if (what === LEAVE_OUT) return { skip: true };
  if (what === ASK_AGAIN) return { skip: true, undecided: true };
  return { skip: false, kind: what as PointKind, zoneId, unit, ...(continues ? { continues } : {}) };
}

/** What the profile of the first of a line's files says of it. */
export function profileChoiceOf(
  { name, runIds }: MappingLine,
  settlements: ReadonlyMap<number, Settlement>,
): { choice: PointChoice; differs: boolean; sentence: string | null } | null {
  for (const runId of runIds) {
    const settlement = settlements.get(runId);
    if (!settlement || settlement.status === "none") continue;
    const point = settlement.content.points[name];
    if (!point) continue;
    const difference = settlement.differences.find((each) => each.point === name);
    return { choice: point.choice, differs: difference !== undefined, sentence: difference?.sentence ?? null };
  }
  return null;
}
