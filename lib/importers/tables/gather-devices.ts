import { looseCode } from "./known-codes";
import type { DeviceRow } from "./read-devices";
import type { SettingRow } from "./read-setting";
import { excerptOf, type RowCells } from "./row-cells";
import type { TableRecord } from "./split-table";
import type { RowFate } from "./table-read";

/** One row of a devices file after reading: what it says of its device and its setting, where it could be read. */
export type SettingLine = {
  key: string;
  cells: RowCells;
  record: TableRecord;
  device: Omit<DeviceRow, "settings"> | null;
  setting: SettingRow | null;
};

/** Puts the rows of each device together. One rejected row holds back the device's other rows. */
export function gatherDevices(lines: readonly SettingLine[]): {
  rows: { line: number; row: DeviceRow }[];
  fates: RowFate[];
} {
  const byDevice = new Map<string, SettingLine[]>();
  for (const line of lines) byDevice.set(line.key, [...(byDevice.get(line.key) ?? []), line]);
  const rows: { line: number; row: DeviceRow }[] = [];
  const fates: RowFate[] = [];
  for (const group of byDevice.values()) {
    rejectRepeatedSettings(group);
    const bad = group.find((line) => line.cells.hasFaults());
    if (bad) {
      fates.push(...group.map((line) => (line.cells.hasFaults() ? line.cells.fate() : heldBack(line, bad.cells.line))));
      continue;
    }
    fates.push(...group.map((line) => line.cells.fate()));
    const [first] = group;
    const settings = group.flatMap((line) => line.setting ?? []);
    if (first?.device) rows.push({ line: first.cells.line, row: { ...first.device, settings } });
  }
  return { rows, fates };
}

function rejectRepeatedSettings(group: readonly SettingLine[]): void {
  const firstLines = new Map<string, number>();
  for (const { cells, setting } of group) {
    if (!setting) continue;
    const name = looseCode(setting.name);
    const first = firstLines.get(name);
    if (first === undefined) firstLines.set(name, cells.line);
    else cells.fault("duplicate", `setting ${setting.name} of this device already stands in line ${first}`);
  }
}

function heldBack({ cells, record }: SettingLine, badLine: number): RowFate {
  return {
    line: cells.line,
    fate: "held-back",
    code: "device-incomplete",
    message: `Line ${cells.line}: held back, since line ${badLine} of the same device was rejected; a device is taken whole.`,
    excerpt: excerptOf(record.cells),
  };
}
