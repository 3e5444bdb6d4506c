import { z } from "zod";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { DEVICE_KINDS, POWER_BASES } from "@/lib/electrical/device-kind";
import { settingEntryFaults } from "@/lib/electrical/setting-limits";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";

/** Hours of the year that a device's energy is counted over. */
const HOURS_IN_YEAR = 8760;

/** A number as typed: null when the field is empty, NaN when it is no number; `settingEntryFaults` words both. */
const typedNumber = z.union([z.number(), z.nan()]).nullable();

const settingInput = z
  .object({
    name: z.string().trim().min(1, "Name the setting.").max(40, "Keep the setting's name under 40 characters."),
    basis: z.enum(POWER_BASES, "Say how the power of this setting is known."),
    currentA: typedNumber.default(null),
    currentResolutionA: typedNumber.default(null),
    voltageV: typedNumber.default(null),
    voltageMeasured: z.boolean().default(false),
    powerFactor: typedNumber.default(null),
    powerW: typedNumber.default(null),
    hoursPerYear: typedNumber.default(0).transform((hours) => hours ?? 0),
    dutyFraction: typedNumber.default(1).transform((duty) => duty ?? 1),
  })
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
