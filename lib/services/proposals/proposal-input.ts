import { z } from "zod";
import { LEVER_SCALES, LEVERS } from "@/lib/proposals/lever";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";

const month = (words: string) => z.number(words).int(words).min(1, words).max(12, words);
const positive = (words: string) => z.number(words).positive(words);

const leverInput = z
  .object({ zoneId: z.number().int(), lever: z.enum(LEVERS), amount: z.number("Give the amount as a number.") })
  .superRefine(({ lever, amount }, issues) => {
    const { least, most, unit, label } = LEVER_SCALES[lever];
    if (amount < least || amount > most)
      issues.addIssue({
        code: "custom",
        path: ["amount"],
        message: `${label}: give ${least} to ${most}${unit ? ` ${unit}` : ""}.`,
      });
  });

const planInput = z.object({
  stepKPerWeek: z
    .number("Say how far a week goes, 0.5 to 1 K.")
    .min(0.5, "Steps under 0.5 K a week drown in the weather: give 0.5 to 1 K.")
    .max(1, "Steps above 1 K a week leave no time to see what people say: give 0.5 to 1 K."),
  stopRules: z.object({
    hotReportsPerWeek: positive("Say how many hot reports in a week stop the trial, 1 or more."),
    dissatisfiedPct: z
      .number("Give the share of dissatisfied people that stops the trial, 6 to 50 %.")
      .min(6, "Nobody gets below 5 % dissatisfied: give 6 to 50 %.")
      .max(50, "Half of the people dissatisfied is too late: give 6 to 50 %."),
    zoneAirTempC: z
      .number("Give the zone air temperature that stops the trial.")
      .min(22, "A limit below 22 °C would stop the trial at once.")
      .max(30, "A limit above 30 °C protects nobody."),
  }),
  switchback: z
    .object({
      pairs: z
        .number("Give the pairs of weeks, 4 to 26.")
        .int()
        .min(4, "Fewer than 4 pairs of weeks show next to nothing: give 4 to 26, 8 or more if you can.")
        .max(26, "A season has no more than 26 pairs of weeks."),
      seed: z.number("Give the seed of the drawn order as a whole number.").int().min(0),
      beginsOn: z
        .string()
        .refine(
          (each) => dayNumberFromLocalDate(each) !== null,
          "Give the first day of the first week as a date of the calendar, YYYY-MM-DD.",
        ),
    })
    .nullable(),
  notice: z
    .string()
    .trim()
    .min(20, "Write the notice that people will read, a sentence or two.")
    .max(4000, "Keep the notice under 4,000 characters."),
});

export const proposalInput = z
  .object({
    title: z.string().trim().min(3, "Give the proposal a name.").max(120, "Keep the name under 120 characters."),
    reason: z.string().trim().max(4000, "Keep the reason under 4,000 characters.").default(""),
    seasonFromMonth: month("Choose the month in which the season begins."),
    seasonToMonth: month("Choose the month in which the season ends."),
    fromMinute: z.number("Give the time of day as hh:mm.").int().min(0).max(1439),
    toMinute: z.number("Give the time of day as hh:mm.").int().min(1).max(1440),
    /** Major units of the currency. */
    investment: z.number("Give the one-off cost as a number, 0 if there is none.").min(0, "A cost is not negative."),
    plan: planInput,
    chosenPosition: z.number().int().min(0).max(3),
    variants: z
      .array(
        z.object({
          name: z.string().trim().min(1, "Give each variant a name.").max(60, "Keep names under 60 characters."),
          levers: z.array(leverInput),
        }),
      )
      .min(1, "A proposal needs a variant.")
      .max(4, "Up to four variants can be compared."),
  })
  .refine(({ fromMinute, toMinute }) => fromMinute < toMinute, {
    path: ["toMinute"],
    message: "The hours end before they begin.",
  })
  .refine(({ variants }) => new Set(variants.map(({ name }) => name)).size === variants.length, {
    path: ["variants"],
    message: "Two variants have the same name: give each its own.",
  })
  .refine(({ chosenPosition, variants }) => chosenPosition < variants.length, {
    path: ["chosenPosition"],
    message: "Choose one of the variants.",
  });

export type ProposalInput = z.input<typeof proposalInput>;
