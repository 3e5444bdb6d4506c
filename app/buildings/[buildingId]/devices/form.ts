import { checkedOf, choiceOf, numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { DeviceClass } from "@/lib/electrical/device-classes";
import type { DeviceInput } from "@/lib/services/devices/device-input";
import type { DeviceView } from "@/lib/services/devices/read";

/** Name of a setting's field in the form, as the use-case names it in its messages. */
export const settingField = (index: number, field: string): string => `settings.${index}.${field}`;

/** Number of settings that a form carries. */
export const settingCount = (values: PostedValues): number => numberOf(values, "settingCount") ?? 0;

/** Posted strings to what the use-case takes; what is no number becomes NaN, which is refused with its reason. */
export function deviceInputFromForm(values: PostedValues): DeviceInput {
  const settings = Array.from({ length: settingCount(values) }, (_, i) => ({
    name: textOf(values, settingField(i, "name")),
    basis: choiceOf<DeviceInput["settings"][number]["basis"]>(values, settingField(i, "basis")),
    rawReadingA: numberOf(values, settingField(i, "currentA")),
    clampTurns: numberOf(values, settingField(i, "clampTurns")) ?? 1,
    meterName: textOf(values, settingField(i, "meterName")),
    meterAccuracyPct: numberOf(values, settingField(i, "meterAccuracyPct")),
    meterAccuracyCounts: numberOf(values, settingField(i, "meterAccuracyCounts")),
    isTrueRms: yesOrNo(textOf(values, settingField(i, "isTrueRms"))),
    openVoltageV: numberOf(values, settingField(i, "openVoltageV")),
    nameplateW: numberOf(values, settingField(i, "nameplateW")),
    fanSpeed: textOf(values, settingField(i, "fanSpeed")),
    useBasis:
      choiceOf<NonNullable<DeviceInput["settings"][number]["useBasis"]>>(values, settingField(i, "useBasis")) ||
      "entered",
    hoursPerDay: numberOf(values, settingField(i, "hoursPerDay")),
    daysPerYear: numberOf(values, settingField(i, "daysPerYear")),
    useNote: textOf(values, settingField(i, "useNote")),
    currentResolutionA: numberOf(values, settingField(i, "currentResolutionA")),
    voltageV: numberOf(values, settingField(i, "voltageV")),
    voltageMeasured: checkedOf(values, settingField(i, "voltageMeasured")),
    powerFactor: numberOf(values, settingField(i, "powerFactor")),
    powerW: numberOf(values, settingField(i, "powerW")),
    hoursPerYear: numberOf(values, settingField(i, "hoursPerYear")),
    dutyFraction: numberOf(values, settingField(i, "dutyFraction")),
  }));
  return {
    label: textOf(values, "label"),
    kind: choiceOf(values, "kind"),
    deviceClass: textOf(values, "deviceClass"),
    zoneCode: textOf(values, "zoneCode"),
    deskCode: textOf(values, "deskCode"),
    make: textOf(values, "make"),
    model: textOf(values, "model"),
    dateCode: textOf(values, "dateCode"),
    nameplateW: numberOf(values, "nameplateW"),
    nameplateA: numberOf(values, "nameplateA"),
    nameplateVoltageV: numberOf(values, "nameplateVoltageV"),
    ownerContact: textOf(values, "ownerContact"),
    isFastened: checkedOf(values, "isFastened"),
    hasThermostat: checkedOf(values, "hasThermostat"),
    foundOn: textOf(values, "foundOn"),
    note: textOf(values, "note"),
    settings,
  };
}

/** A choice of three: yes, no, or not said. */
const yesOrNo = (text: string): boolean | null => (text === "yes" ? true : text === "no" ? false : null);
const wordOf = (value: boolean | null): string => (value === null ? "" : value ? "yes" : "no");

/** A fresh sheet for a class: its settings, nothing measured yet. */
export function formFromClass(deviceClass: DeviceClass, start: { foundOn: string; voltageV: number }): PostedValues {
  const values: PostedValues = {
    kind: deviceClass.kind,
    deviceClass: deviceClass.id,
    foundOn: start.foundOn,
    settingCount: String(deviceClass.settings.length),
  };
  if (deviceClass.kind === "space-heater" && !deviceClass.isContact) values.hasThermostat = "on";
  deviceClass.settings.forEach((setting, i) => {
    values[settingField(i, "name")] = setting.name;
    values[settingField(i, "basis")] = "class-default";
    values[settingField(i, "voltageV")] = String(start.voltageV);
    values[settingField(i, "hoursPerYear")] = "0";
    values[settingField(i, "dutyFraction")] = "1";
  });
  return values;
}

/** A registered device as its sheet shows it. */
export function formFromDevice(device: DeviceView): PostedValues {
  const values: PostedValues = {
    label: device.label,
    kind: device.kind,
    deviceClass: device.deviceClass,
    zoneCode: device.zoneCode,
    deskCode: device.deskCode ?? "",
    foundOn: device.foundOn,
    note: device.note,
    make: device.make,
    model: device.model,
    dateCode: device.dateCode,
    ownerContact: device.ownerContact,
    nameplateW: textOfNumber(device.nameplateW),
    nameplateA: textOfNumber(device.nameplateA),
    nameplateVoltageV: textOfNumber(device.nameplateVoltageV),
    settingCount: String(device.settings.length),
  };
  if (device.hasThermostat) values.hasThermostat = "on";
  if (device.isFastened) values.isFastened = "on";
  device.settings.forEach((setting, i) => {
    values[settingField(i, "name")] = setting.name;
    values[settingField(i, "basis")] = setting.basis;
    if (setting.voltageMeasured) values[settingField(i, "voltageMeasured")] = "on";
    values[settingField(i, "currentA")] = textOfNumber(setting.rawReadingA ?? setting.currentA);
    values[settingField(i, "clampTurns")] = String(setting.clampTurns);
    values[settingField(i, "isTrueRms")] = wordOf(setting.isTrueRms);
    for (const field of ["meterName", "fanSpeed", "useBasis", "useNote"] as const)
      values[settingField(i, field)] = setting[field];
    for (const field of [
      "meterAccuracyPct",
      "meterAccuracyCounts",
      "openVoltageV",
      "nameplateW",
      "hoursPerDay",
      "daysPerYear",
      "currentResolutionA",
      "voltageV",
      "powerFactor",
      "powerW",
      "hoursPerYear",
      "dutyFraction",
    ] as const)
      values[settingField(i, field)] = textOfNumber(setting[field]);
  });
  return values;
}

const textOfNumber = (value: number | null): string => (value === null ? "" : String(value));
