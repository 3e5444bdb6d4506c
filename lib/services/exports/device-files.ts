import type { ValueRange } from "@/lib/electrical/value-range";
import type { DeviceView } from "../devices/read";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";

/**
 * The register in the columns of the table that can be brought in, one row a setting, and beside it what is worked out
 * of each setting at the building's electricity price. A figure that is not known is an empty cell.
 */
export function deviceFiles(devices: readonly DeviceView[], currency: string): ExportedFile[] {
  return [
    { fileName: "devices.csv", text: csvText(REGISTER_COLUMNS, devices.flatMap(registerRows)) },
    {
      fileName: "device-figures.csv",
      text: csvText(
        [...FIGURE_COLUMNS, ...["value", "low", "high"].map((part) => `cost ${part} (${currency}/year)`)],
        devices.flatMap(figureRows),
      ),
    },
  ];
}

const REGISTER_COLUMNS = [
  "device",
  "kind",
  "class",
  "zone",
  "desk",
  "setting",
  "basis",
  "current (A)",
  "resolution (A)",
  "voltage (V)",
  "voltage measured",
  "power factor",
  "power (W)",
  "hours per year",
  "duty",
  "has thermostat",
  "found on",
  "retired on",
  "note",
];

const registerRows = (device: DeviceView) =>
  device.settings.map((setting) => [
    device.label,
    device.kind,
    device.deviceClass,
    device.zoneCode,
    device.deskCode,
    setting.name,
    setting.basis,
    setting.currentA,
    setting.currentResolutionA,
    setting.voltageV,
    setting.voltageMeasured,
    setting.powerFactor,
    setting.basis === "nameplate" ? setting.nameplateW : setting.powerW,
    setting.hoursPerYear,
    setting.dutyFraction,
    device.hasThermostat,
    device.foundOn,
    device.retiredOn,
    device.note,
  ]);

const FIGURE_COLUMNS = [
  "device",
  "setting",
  "power value (W)",
  "power low (W)",
  "power high (W)",
  "upper bound",
  "energy value (kWh/year)",
  "energy low (kWh/year)",
  "energy high (kWh/year)",
];

const cellsOf = (range: ValueRange | null) => (range ? [range.value, range.low, range.high] : [null, null, null]);

const figureRows = ({ label, sheet }: DeviceView) =>
  sheet.lines.map(({ name, power, energyKwh, cost }) => {
    const known = power.status === "ok" ? power : null;
    const upperBound = known ? known.isUpperBound : null;
    return [label, name, ...cellsOf(known?.powerW ?? null), upperBound, ...cellsOf(energyKwh), ...cellsOf(cost)];
  });
