import { z } from "zod";
import { isTimeStart } from "@/lib/importers/trend-csv/elapsed-seconds";
import { POINT_KINDS } from "@/lib/trends/point-kind";

/** What becomes of one point: imported as a kind, at a zone or at the building as a whole, or left out. */
export const pointChoice = z.union([
  z.object({
    skip: z.literal(true),
    /** Left out because nothing settled it, or for this time only: it is asked about again. */
    undecided: z.literal(true).optional(),
  }),
  z.object({
    skip: z.literal(false),
    kind: z.enum(POINT_KINDS, "Choose what the point is, or leave it out."),
    zoneId: z.number().int().nullable(),
    /** Unit, when the file does not say it. */
    unit: z.string().nullable().default(null),
    /** Name that the same point had before: its samples go on under the new one. */
    continues: z.string().optional(),
  }),
]);
export type PointChoice = z.input<typeof pointChoice>;

/** Answers to a file's questions. */
export const fileAnswers = z.object({
  dateOrder: z.enum(["mdy", "dmy"]).optional(),
  timeStart: z.string().refine(isTimeStart, "Give a date and a time of day, for example 2026-01-01 00:00.").optional(),
  clock: z.enum(["standard-time-all-year", "local-time"]).optional(),
  valueColumn: z.string().optional(),
  flagColumn: z.object({ good: z.array(z.string()) }).optional(),
});
export type FileAnswers = z.input<typeof fileAnswers>;

/** A profile to be made from the files of one source, by the source's key. */
const profileWish = z.object({
  key: z.string(),
  name: z.string().trim().max(120, "A name has at most 120 characters."),
});
export type ProfileWish = z.input<typeof profileWish>;

export const mappingInput = z.object({
  points: z.record(z.string(), pointChoice),
  answersByRun: z.record(z.string(), fileAnswers).default({}),
  /** The mark of the cautions that were looked at and let pass. */
  cautionsSeen: z.string().default(""),
  /** Sources whose mapping is kept as a profile; a name in use gets a new version. */
  profiles: z.array(profileWish).default([]),
});
export type MappingInput = z.input<typeof mappingInput>;

/** What an import was told: kept with its run. */
export type RunAnswers = { file: FileAnswers; points: Record<string, PointChoice> };
