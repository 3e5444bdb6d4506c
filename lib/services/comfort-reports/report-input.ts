import { z } from "zod";
import { PREFERENCES } from "@/db/schema/comfort";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import { BODY_PARTS, SINCE_WHEN } from "@/lib/comfort-reports/answers";

const SCALE = "Choose how you feel on the scale from cold to hot.";
const optional = <T extends z.ZodType>(schema: T) => schema.nullable().default(null);

/** Longest note [characters], and longest mail address (RFC 5321, 4.5.3.1.3). */
export const NOTE_LENGTH = 500;
const ADDRESS_LENGTH = 254;

/** What a report may say, whichever way it comes in. */
export const reportInput = z.object({
  thermalSensation: z.number(SCALE).int().min(-3, SCALE).max(3, SCALE),
  preference: z.enum(PREFERENCES, "Say whether you would like it cooler, warmer or as it is."),
  heaterInUse: optional(z.boolean()),
  fanInUse: optional(z.boolean()),
  draught: optional(z.boolean()),
  sun: optional(z.boolean()),
  dryAir: optional(z.boolean()),
  sinceWhen: optional(z.enum(SINCE_WHEN, "Choose since when, or leave it open.")),
  bodyParts: z.array(z.enum(BODY_PARTS, "Choose where it is felt, or leave it open.")).default([]),
  clothing: optional(
    z.enum(
      ENSEMBLES.map(({ id }) => id),
      "Choose what comes nearest to what you wear, or leave it open.",
    ),
  ),
  activity: optional(
    z.enum(
      ACTIVITIES.map(({ id }) => id),
      "Choose what comes nearest to what you do, or leave it open.",
    ),
  ),
  note: z.string().trim().max(NOTE_LENGTH, `Keep the note under ${NOTE_LENGTH} characters.`).default(""),
  replyAddress: optional(
    z
      .string()
      .trim()
      .max(ADDRESS_LENGTH, "Write a mail address such as name@example.com, or leave it open.")
      .pipe(z.email("Write a mail address such as name@example.com, or leave it open.")),
  ),
  language: z.string().max(8).default("en"),
  submissionId: optional(z.string().max(64)),
});

export type ComfortReportInput = z.input<typeof reportInput>;
export type ComfortReportValues = z.output<typeof reportInput>;

/** The same as a row stores it: parts of the body as one text. */
export function reportColumns({ bodyParts, ...values }: ComfortReportValues) {
  return { ...values, bodyParts: bodyParts.length > 0 ? bodyParts.join(",") : null };
}
