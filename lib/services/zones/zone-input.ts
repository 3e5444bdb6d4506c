import { z } from "zod";

/** A zone as typed or imported. SI units. */
export const zoneInput = z
  .object({
    code: z
      .string()
      .trim()
      .min(1, "Give the zone a short code, for example 2-14.")
      .max(40, "Keep the code under 40 characters."),
    name: z.string().trim().max(120, "Keep the name under 120 characters.").default(""),
    floor: z.string().trim().max(40, "Keep the floor under 40 characters.").default(""),
    floorAreaM2: z
      .number("Give the area as a number.")
      .gt(0, "The area must be more than zero.")
      .max(50_000, "The area is larger than one zone can be: check the unit.")
      .nullable()
      .default(null),
    airHandler: z.string().trim().max(40, "Keep the air handler under 40 characters.").default(""),
    designAirflowM3ps: z
      .number("Give the design airflow as a number.")
      .gt(0, "The design airflow must be more than zero.")
      .max(50, "The design airflow is larger than one zone can have: check the unit.")
      .nullable()
      .default(null),
    minimumAirflowM3ps: z
      .number("Give the minimum airflow as a number.")
      .min(0, "The minimum airflow cannot be negative.")
      .nullable()
      .default(null),
    targetZoneAirTempC: z
      .number("Give the zone's target as a number.")
      .min(18, "The target zone air temperature must lie between 18 and 30 °C (64 and 86 °F).")
      .max(30, "The target zone air temperature must lie between 18 and 30 °C (64 and 86 °F).")
      .nullable()
      .optional(),
    fixInProgress: z.string().trim().max(200, "Keep it under 200 characters.").optional(),
  })
  .superRefine((value, refinement) => {
    if (
      value.minimumAirflowM3ps !== null &&
      value.designAirflowM3ps !== null &&
      value.minimumAirflowM3ps > value.designAirflowM3ps
    )
      refinement.addIssue({
        code: "custom",
        path: ["minimumAirflowM3ps"],
        message: "The minimum airflow cannot be above the design airflow.",
      });
  });

export type ZoneInput = z.input<typeof zoneInput>;
