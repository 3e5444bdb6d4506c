import type { DeviceKind } from "@/lib/electrical/device-kind";
import { normalHeading } from "./columns";
import { gatherDevices, type SettingLine } from "./gather-devices";
import { codeFinder, looseCode } from "./known-codes";
import { readSetting, type SettingRow } from "./read-setting";
import { openTable } from "./read-table";
import { type RowCells, rowCells } from "./row-cells";
import type { RowFate, TableRead } from "./table-read";

/** A device with its settings in the order of the file. */
export type DeviceRow = {
  label: string;
  kind: DeviceKind;
  deviceClass: string;
  zoneCode: string;
  deskCode: string | null;
  settings: readonly SettingRow[];
};

export type DeviceTableBuilding = {
  zoneCodes: readonly string[];
  desks: readonly { code: string; zoneCode: string }[];
  classes: readonly { id: string; label: string; kind: DeviceKind }[];
  /** Faults of a setting that the caller knows about, as sentences without a full stop. */
  settingFaults?: (setting: SettingRow, device: { kind: DeviceKind; deviceClass: string }) => readonly string[];
};

const KINDS: Readonly<Record<string, DeviceKind>> = {
  "space heater": "space-heater",
  heater: "space-heater",
  "personal fan": "personal-fan",
  fan: "personal-fan",
};

/**
 * Devices of a CSV file with one row a setting. Kind, class, zone and desk may stand in the first row of a device
 * only. A device is taken whole or not at all: when one of its rows is rejected, the others are held back.
 */
export function readDevicesTable(file: { bytes: Uint8Array }, building: DeviceTableBuilding): TableRead<DeviceRow> {
  const table = openTable(file, "devices");
  if (table.status !== "ok") return table;
  const findPlace = placeFinder(building);
  const findClass = classFinder(building.classes);
  const lines: SettingLine[] = [];
  const fates: RowFate[] = table.fates;
  const firstRows = new Map<string, Omit<DeviceRow, "settings"> | null>();
  for (const record of table.records) {
    const cells = rowCells(table, record);
    const label = cells.text("label", 60);
    if (label === "") {
      cells.fault("device-blank", "the row does not say which device it belongs to");
      fates.push(cells.fate());
      continue;
    }
    const key = looseCode(label);
    const described = describeDevice(cells, label, firstRows.get(key), findPlace, findClass);
    if (!firstRows.get(key)) firstRows.set(key, described);
    const setting = readSetting(cells);
    if (setting && described) {
      for (const fault of building.settingFaults?.(setting, described) ?? []) cells.fault("setting-limits", fault);
    }
    lines.push({ key, cells, record, device: described, setting });
  }
  const gathered = gatherDevices(lines);
  fates.push(...gathered.fates);
  fates.sort((a, b) => a.line - b.line);
  return { status: "ok", rows: gathered.rows, fates, findings: table.findings, fields: [...table.columns.keys()] };
}

type Described = Omit<DeviceRow, "settings">;
type FindPlace = ReturnType<typeof placeFinder>;
type FindClass = ReturnType<typeof classFinder>;

/** What a row says of its device; blank cells of a later row repeat the first, and different ones are a fault. */
function describeDevice(
  cells: RowCells,
  label: string,
  first: Described | null | undefined,
  findPlace: FindPlace,
  findClass: FindClass,
): Described | null {
  const texts = {
    kind: cells.text("kind", 40),
    class: cells.text("deviceClass", 80),
    zone: cells.text("zoneCode", 40),
    desk: cells.text("deskCode", 40),
  };
  const isBlank = Object.values(texts).every((text) => text === "");
  // After a first row that could not be read, a blank repeat has nothing to add: it is held back with its device.
  if (first !== undefined && isBlank) return first;
  const found = findClass(cells, texts.kind || first?.kind || "", texts.class || first?.deviceClass || "");
  const place = findPlace(cells, texts.zone || first?.zoneCode || "", texts.desk || first?.deskCode || "");
  if (!found || !place) return null;
  const device = { label: first?.label ?? label, ...found, ...place };
  const differs =
    first && (["kind", "deviceClass", "zoneCode", "deskCode"] as const).find((key) => first[key] !== device[key]);
  if (differs) {
    const names = { kind: "kind", deviceClass: "class", zoneCode: "zone", deskCode: "desk" } as const;
    cells.fault(
      "device-differs",
      `device ${label} has ${names[differs]} ${device[differs] ?? "blank"} here but ${first[differs] ?? "blank"} in its first row`,
    );
  }
  return device;
}

function classFinder(classes: DeviceTableBuilding["classes"]) {
  return (cells: RowCells, kindText: string, classText: string): Pick<DeviceRow, "kind" | "deviceClass"> | null => {
    const kind = KINDS[normalHeading(kindText)];
    if (kindText !== "" && !kind) {
      cells.fault("kind-unknown", `kind "${kindText}" is not known; write space-heater or personal-fan`);
    }
    const wanted = normalHeading(classText);
    const found = classes.find((each) => normalHeading(each.id) === wanted || normalHeading(each.label) === wanted);
    if (!found) {
      const known = classes.filter((each) => !kind || each.kind === kind).map((each) => each.id);
      const what = classText === "" ? "the class is blank" : `class "${classText}" is not known`;
      cells.fault("class-unknown", `${what}; known are ${known.join(", ")}`);
      return null;
    }
    if (kind && found.kind !== kind) {
      cells.fault("class-of-other-kind", `class ${found.id} is a ${found.kind}, but the kind says ${kind}`);
    }
    return { kind: found.kind, deviceClass: found.id };
  };
}

function placeFinder(building: Pick<DeviceTableBuilding, "zoneCodes" | "desks">) {
  const findZone = codeFinder("zone", building.zoneCodes);
  const deskCodes = building.desks.map((desk) => desk.code);
  const findDesk = codeFinder("desk", deskCodes);
  const zoneOfDesk = new Map(building.desks.map((desk) => [desk.code, desk.zoneCode]));
  return (cells: RowCells, zoneText: string, deskText: string): Pick<DeviceRow, "zoneCode" | "deskCode"> | null => {
    const deskCode = deskText === "" ? null : findDesk(deskText, cells);
    if (deskText !== "" && deskCode === null) return null;
    const deskZone = deskCode === null ? undefined : zoneOfDesk.get(deskCode);
    if (zoneText === "") {
      if (deskZone !== undefined) return { zoneCode: deskZone, deskCode };
      cells.fault("zone-blank", "the row names neither a zone nor a desk, so the device has no place");
      return null;
    }
    const zoneCode = findZone(zoneText, cells);
    if (zoneCode === null) return null;
    if (deskZone !== undefined && deskZone !== zoneCode) {
      cells.fault(
        "desk-in-other-zone",
        `desk ${deskCode} stands in zone ${deskZone}, but the row says zone ${zoneCode}`,
      );
    }
    return { zoneCode, deskCode };
  };
}
