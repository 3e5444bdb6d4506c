import { z } from "zod";

/** Most readings of one call, of all its points. */
export const MOST_READINGS = 5000;

const series = z.object({
  point: z.string("Name the point.").min(1, "Name the point."),
  /** Unit of the values; the one that the point was mapped with when it is left out. */
  unit: z.string().min(1).nullable().default(null),
  readings: z
    .array(
      z.object({
        /** Date, time and offset, as ISO 8601 writes them. */
        at: z.string("Give the time as text, with its offset."),
        value: z.union([z.number(), z.boolean(), z.null()], "A value is a number, true, false or null."),
        status: z.string().max(200).optional(),
      }),
      "Give the readings as a list.",
    )
    .min(1, "Give at least one reading."),
});

/** Readings of one point, or of several. */
export const readingsInput = z.union([
  series.transform((each) => [each]),
  z.array(series).min(1, "Give at least one point."),
]);
export type ReadingsInput = z.input<typeof readingsInput>;
export type ReadingSeries = z.output<typeof series>;
