import { z } from "zod";
import { POINT_KINDS } from "@/lib/trends/point-kind";

/** What becomes of one point: imported as a kind, at a zone or at the building as a whole, or left out. */
export const pointChoice = z.union([
  z.object({
    skip: z.literal(true),
    /** Left out because nothing settled it, not because someone wanted it out: it is asked about again. */
    undecided: z.literal(true).optional(),
  }),
  z.object({
    skip: z.literal(false),
    kind: z.enum(POINT_KINDS, "Choose what the point is, or leave it out."),
    zoneId: z.number().int().nullable(),
    /** Unit, when the file does not say it. */
    unit: z.string().nullable().default(null),
  }),
]);
export type PointChoice = z.input<typeof pointChoice>;

/** Answers to a file's questions. */
export const fileAnswers = z.object({
  dateOrder: z.enum(["mdy", "dmy"]).optional(),
  clock: z.enum(["standard-time-all-year", "local-time"]).optional(),
  valueColumn: z.string().optional(),
  flagColumn: z.object({ good: z.array(z.string()) }).optional(),
});
export type FileAnswers = z.input<typeof fileAnswers>;

export const mappingInput = z.object({
  points: z.record(z.string(), pointChoice),
  answersByRun: z.record(z.string(), fileAnswers).default({}),
});
export type MappingInput = z.input<typeof mappingInput>;

/** What an import was told: kept with its run. */
export type RunAnswers = { file: FileAnswers; points: Record<string, PointChoice> };
