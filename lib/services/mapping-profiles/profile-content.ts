import { z } from "zod";
import { fileAnswers, pointChoice } from "../trend-imports/run-input";

/** A point of a profile: how its file wrote it, and what becomes of it. */
const profilePoint = z.object({
  /** Unit as the file writes it, null when it writes none; a file that writes another has changed. */
  unitAsWritten: z.string().nullable(),
  holds: z.enum(["numeric", "state"]),
  choice: pointChoice,
});

const fileShape = z.object({
  layout: z.string().nullable(),
  delimiter: z.string().nullable(),
  /** How dates are written: `mdy`, `dmy`, `ymd`, `epoch`, `serial` or `elapsed`. Null when no file ever showed it. */
  dateFormat: z.string().nullable(),
});
export type FileShape = z.output<typeof fileShape>;

/** What one version of a profile says. The headings are the names of its points with their units. */
export const profileContent = z.object({
  shape: fileShape,
  answers: fileAnswers.extend({
    flagColumn: z.object({ good: z.array(z.string()), seen: z.array(z.string()).default([]) }).optional(),
  }),
  points: z.record(z.string(), profilePoint),
  /** Cautions that a person has looked at and let pass: not raised again by the next file. */
  acceptedCautions: z.array(z.string()).default([]),
});
export type ProfileContent = z.output<typeof profileContent>;
export type ProfilePoint = z.output<typeof profilePoint>;

/** Reads what was stored; throws when it is none of ours, which is a fault of the program. */
export const contentOf = (stored: unknown): ProfileContent => profileContent.parse(stored);
