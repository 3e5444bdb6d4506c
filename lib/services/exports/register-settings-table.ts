import { sourceOfHours } from "@/lib/electrical/use-basis";
import type { DeviceView } from "../devices/read";
import type { Cell } from "./csv";
import type { RegisterTable } from "./register-table";

/** A row a setting: what was read, what is worked out of it, and the origin of both. */
export function settingsTable(devices: readonly DeviceView[], currency: string): RegisterTable {
  return {
    name: "settings",
    columns: [
      "label",
      "setting",
      "power (W)",
      "power low (W)",
      "power high (W)",
      "power is an upper bound",
      "origin of power",
      "reading of clamp (A)",
      "clamp turns",
      "current (A)",
      "last digit of meter (A)",
      "meter",
      "meter accuracy (% of reading)",
      "meter accuracy (counts)",
      "true RMS",
      "voltage under load (V)",
      "voltage read at the outlet",
      "voltage with device off (V)",
      "power factor",
      "plug-in meter (W)",
      "nameplate of setting (W)",
      "fan speed",
      "selected (h/year)",
      "origin of hours",
      "hours a day (h)",
      "days a year",
      "note on hours",
      "duty (0 to 1)",
      "energy (kWh/year)",
      "energy low (kWh/year)",
      "energy high (kWh/year)",
      `cost (${currency}/year)`,
      `cost low (${currency}/year)`,
      `cost high (${currency}/year)`,
    ],
    rows: devices.flatMap((device) => device.settings.map((setting, at) => settingRow(device, setting, at))),
  };
}

function settingRow(device: DeviceView, setting: DeviceView["settings"][number], at: number): Cell[] {
  const line = device.sheet.lines[at];
  const power = line?.power.status === "ok" ? line.power : null;
  return [
    device.label,
    setting.name,
    power?.powerW.value ?? null,
    power?.powerW.low ?? null,
    power?.powerW.high ?? null,
    power?.isUpperBound ?? null,
    setting.basis,
    setting.rawReadingA,
    setting.clampTurns,
    setting.currentA,
    setting.currentResolutionA,
    setting.meterName,
    setting.meterAccuracyPct,
    setting.meterAccuracyCounts,
    setting.isTrueRms,
    setting.voltageV,
    setting.voltageMeasured,
    setting.openVoltageV,
    setting.powerFactor,
    setting.powerW,
    setting.nameplateW,
    setting.fanSpeed,
    setting.hoursPerYear,
    sourceOfHours(setting.useBasis),
    setting.hoursPerDay,
    setting.daysPerYear,
    setting.useNote,
    setting.dutyFraction,
    line?.energyKwh?.value ?? null,
    line?.energyKwh?.low ?? null,
    line?.energyKwh?.high ?? null,
    line?.cost?.value ?? null,
    line?.cost?.low ?? null,
    line?.cost?.high ?? null,
  ];
}
