import { z } from "zod";
import { HEATING_FUELS, SYSTEM_TYPES } from "@/lib/assumptions/system-type";
import { isCurrency } from "@/lib/money/money";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { isTimeZone } from "@/lib/time/zone-table";

const interval = z
  .object({
    startMinute: z.number("Give the start as hours and minutes, for example 07:00.").int().min(0).max(1439),
    endMinute: z.number("Give the end as hours and minutes, for example 18:00.").int().min(1).max(1440),
  })
  .refine((each) => each.startMinute < each.endMinute, {
    message: "Occupied hours must end after they begin. For a night shift give two intervals, one up to 24:00.",
  });

const price = (what: string) =>
  z
    .number(`Give ${what} as a number.`)
    .min(0, `${what} cannot be negative.`)
    .max(10_000, `${what} is implausibly high.`);

/** A building as its people describe it. SI units; money in major units of the currency. */
export const buildingInput = z
  .object({
    name: z.string().trim().min(1, "Give the building a name.").max(120, "Keep the name under 120 characters."),
    timeZone: z
      .string()
      .refine(isTimeZone, "Choose an IANA time zone, for example America/New_York: trend logs are read by its clock."),
    currency: z.string().refine(isCurrency, "Give the currency as its three letters, for example USD or EUR."),
    temperatureUnit: z.enum(["C", "F"], "Choose °C or °F."),
    areaUnit: z.enum(["m2", "ft2"], "Choose m² or ft²."),
    floorAreaM2: z
      .number("Give the floor area as a number.")
      .gt(0, "The floor area must be more than zero.")
      .max(2_000_000, "The floor area is larger than any building: check the unit."),
    systemType: z.enum(SYSTEM_TYPES, "Choose the system that serves most of the zones."),
    hasEconomizer: z.boolean(),
    heatingFuel: z.enum(HEATING_FUELS, "Choose what the heating coil is fed by."),
    electricityPriceKind: z.enum(["marginal", "blended"], "Say whether the price is marginal or blended."),
    electricityPricePerKwh: price("The electricity price"),
    demandPricePerKw: price("The demand charge").nullable(),
    demandMonths: z
      .number("Give the months as a whole number.")
      .int("Give the months as a whole number.")
      .min(1, "Billed months lie between 1 and 12.")
      .max(12, "Billed months lie between 1 and 12.")
      .nullable(),
    heatPricePerKwh: price("The heat price").nullable(),
    complaintHours: z
      .number("Give the hours as a number.")
      .min(0, "Hours cannot be negative.")
      .max(40, "More than 40 hours for one complaint is implausible.")
      .nullable(),
    labourPricePerHour: price("The labour rate").nullable(),
    targetZoneAirTempC: z
      .number("Give the target zone air temperature as a number.")
      .min(18, "The target zone air temperature must lie between 18 and 30 °C (64 and 86 °F).")
      .max(30, "The target zone air temperature must lie between 18 and 30 °C (64 and 86 °F)."),
    presentCoolingSetpointC: z
      .number("Give the present cooling setpoint as a number.")
      .min(15, "A cooling setpoint lies between 15 and 32 °C (59 and 90 °F).")
      .max(32, "A cooling setpoint lies between 15 and 32 °C (59 and 90 °F).")
      .nullable(),
    mainsVoltageV: z
      .number("Give the mains voltage as a number.")
      .min(90, "The mains voltage must lie between 90 and 260 V.")
      .max(260, "The mains voltage must lie between 90 and 260 V."),
    occupiedHours: z.object({
      weekdays: z.record(z.string().regex(/^[1-7]$/), z.array(interval)),
      holidays: z.array(
        z
          .string()
          .refine((date) => dayNumberFromLocalDate(date) !== null, "Give each holiday as YYYY-MM-DD, one a line."),
      ),
    }),
  })
  .superRefine((value, refinement) => {
    const refuse = (path: string, message: string) => refinement.addIssue({ code: "custom", path: [path], message });
    if (value.electricityPriceKind === "blended" && value.demandPricePerKw !== null)
      refuse(
        "demandPricePerKw",
        "A blended price already contains the demand charge: leave this empty, or give the marginal energy price.",
      );
    if ((value.demandPricePerKw === null) !== (value.demandMonths === null))
      refuse("demandMonths", "Give the demand charge together with the months in which cooling sets the peak.");
    if ((value.complaintHours === null) !== (value.labourPricePerHour === null))
      refuse("labourPricePerHour", "Hours for a complaint and the labour rate go together: give both or neither.");
    if (!Object.values(value.occupiedHours.weekdays).some((intervals) => intervals.length > 0))
      refuse("occupiedHours", "Give the occupied hours of at least one weekday: only occupied time is counted.");
    for (const [weekday, intervals] of Object.entries(value.occupiedHours.weekdays)) {
      const ordered = [...intervals].sort((a, b) => a.startMinute - b.startMinute);
      if (ordered.some((each, i) => i > 0 && each.startMinute < (ordered[i - 1] as typeof each).endMinute))
        refuse(`occupiedHours.weekdays.${weekday}`, "Occupied hours of a day must not overlap.");
    }
  });

export type BuildingInput = z.input<typeof buildingInput>;
export type BuildingValues = z.output<typeof buildingInput>;
