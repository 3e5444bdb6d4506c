import { z } from "zod";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { DEVICE_KINDS, POWER_BASES } from "@/lib/electrical/device-kind";
import { type EntryRange, withinFault } from "@/lib/electrical/entry-range";
import { resolvedSetting } from "@/lib/electrical/resolved-setting";
import { settingEntryFaults } from "@/lib/electrical/setting-limits";
import { USE_BASES } from "@/lib/electrical/use-basis";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";

/** Hours of the year that a device's energy is counted over. */
const HOURS_IN_YEAR = 8760;

/** A number as typed: null when the field is empty, NaN when it is no number; `settingEntryFaults` words both. */
const typedNumber = z.union([z.number(), z.nan()]).nullable();

/** A number of the device as a whole, empty or within its range. */
const ranged = (range: EntryRange) =>
  typedNumber.default(null).superRefine((value, refinement) => {
    const message = withinFault(value, range);
    if (message) refinement.addIssue({ code: "custom", message });
  });

const settingInput = z
  .object({
    name: z.string().trim().min(1, "Name the setting.").max(40, "Keep the setting's name under 40 characters."),
    basis: z.enum(POWER_BASES, "Say how the power of this setting is known."),
    currentA: typedNumber.default(null),
    currentResolutionA: typedNumber.default(null),
    voltageV: typedNumber.default(null),
    voltageMeasured: z.boolean().default(false),
    powerFactor: typedNumber.default(null),
    /** What the clamp meter showed; `currentA` stands for it where the conductor passed the jaws once. */
    rawReadingA: typedNumber.default(null),
    clampTurns: z.number().default(1),
    meterName: z.string().trim().max(80, "Keep the meter's name under 80 characters.").default(""),
    meterAccuracyPct: typedNumber.default(null),
    meterAccuracyCounts: typedNumber.default(null),
    isTrueRms: z.boolean().nullable().default(null),
    openVoltageV: typedNumber.default(null),
    powerW: typedNumber.default(null),
    nameplateW: typedNumber.default(null),
    fanSpeed: z.string().trim().max(40, "Keep the speed under 40 characters.").default(""),
    useBasis: z.enum(USE_BASES, "Say how the hours are known.").default("entered"),
    hoursPerDay: typedNumber.default(null),
    daysPerYear: typedNumber.default(null),
    useNote: z.string().trim().max(200, "Keep what is said of the hours under 200 characters.").default(""),
    hoursPerYear: typedNumber.default(0),
    dutyFraction: typedNumber.default(1).transform((duty) => duty ?? 1),
  })
  .transform((setting) => ({ ...setting, ...resolvedSetting(setting) }))
  .superRefine((setting, refinement) => {
    for (const [field, message] of Object.entries(settingEntryFaults(setting))) {
      if (message) refinement.addIssue({ code: "custom", path: [field], message });
    }
  });

/** A device as registered: where it stands, what it is, and what was read at each setting. */
export const deviceInput = z
  .object({
    label: z
      .string()
      .trim()
      .min(1, "Give the device a label, such as the number of its sticker.")
      .max(60, "Keep the label under 60 characters."),
    kind: z.enum(DEVICE_KINDS, "Say whether it is a heater or a fan."),
    deviceClass: z.string().refine((id) => deviceClassById(id) !== null, "Choose what sort of device it is."),
    zoneCode: z.string().trim().min(1, "Say which zone it stands in."),
    deskCode: z.string().trim().default(""),
    make: z.string().trim().max(80, "Keep the make under 80 characters.").default(""),
    model: z.string().trim().max(80, "Keep the model under 80 characters.").default(""),
    dateCode: z.string().trim().max(40, "Keep the date code under 40 characters.").default(""),
    nameplateW: ranged({ what: "The nameplate's power", example: "1500", low: 0, high: 5000, unit: "W" }),
    nameplateA: ranged({ what: "The nameplate's current", example: "12.5", low: 0, high: 60, unit: "A" }),
    nameplateVoltageV: ranged({ what: "The nameplate's voltage", example: "120", low: 90, high: 260, unit: "V" }),
    ownerContact: z.string().trim().max(120, "Keep the contact under 120 characters.").default(""),
    isFastened: z.boolean().default(false),
    hasThermostat: z.boolean().default(false),
    foundOn: z
      .string()
      .refine((date) => dayNumberFromLocalDate(date) !== null, "Give the day it was found as YYYY-MM-DD."),
    note: z.string().trim().max(500, "Keep the note under 500 characters.").default(""),
    settings: z.array(settingInput).min(1, "A device has at least one setting.").max(12, "Twelve settings are enough."),
  })
  .superRefine((device, refinement) => {
    const deviceClass = deviceClassById(device.deviceClass);
    if (deviceClass && deviceClass.kind !== device.kind)
      refinement.addIssue({
        code: "custom",
        path: ["deviceClass"],
        message: `A ${deviceClass.label} is not a ${device.kind === "personal-fan" ? "fan" : "heater"}: choose another sort, or correct the kind.`,
      });
    const hours = device.settings.reduce((sum, each) => sum + each.hoursPerYear, 0);
    if (hours > HOURS_IN_YEAR)
      refinement.addIssue({
        code: "custom",
        path: ["settings.0.hoursPerYear"],
        message: `The settings are selected for ${Math.round(hours)} hours together, more than a year has. Only one can be on at a time: lower one of them.`,
      });
  });

export type DeviceInput = z.input<typeof deviceInput>;
