import type { DeviceKind } from "@/lib/electrical/device-kind";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { cellNumber } from "../tables/cell-number";
import { normalHeading } from "../tables/columns";
import type { RowFate } from "../tables/table-read";
import { headingRow } from "./propose-register-mapping";
import type { RegisterSheet } from "./register-grid";
import type { RegisterField, RegisterMapping } from "./register-mapping";

/** A device as a row of a register says it; null where the cell is blank or there is no column. */
export type RegisterRow = {
  line: number;
  label: string;
  deviceClass: string;
  kind: DeviceKind;
  zoneCode: string;
  deskCode: string | null;
  make: string;
  model: string;
  nameplateW: number | null;
  nameplateA: number | null;
  measuredW: number | null;
  hoursPerYear: number | null;
  foundOn: string | null;
  note: string;
};

export type RegisterBuilding = {
  zoneCodes: ReadonlySet<string>;
  /** Zone by desk code. */
  zoneOfDesk: ReadonlyMap<string, string>;
  classes: ReadonlyMap<string, { kind: DeviceKind }>;
  /** Labels that are on the register already. */
  labels: ReadonlySet<string>;
};

/** Chosen for a text of the class column: rows of it are left out. */
export const LEAVE_OUT = "leave-out";

type Remark = { code: string; text: string };

/** Rows of a sheet by its mapping: devices to take, and what becomes of every row, the heading and rows above it included. */
export function readRegister(
  sheet: RegisterSheet,
  mapping: RegisterMapping,
  building: RegisterBuilding,
): { rows: RegisterRow[]; fates: RowFate[] } {
  const heading = headingRow(sheet);
  const rows: RegisterRow[] = [];
  const fates: RowFate[] = [];
  const firstLines = new Map<string, number>();
  const units = unitFactors(sheet.rows[heading]?.cells ?? [], mapping);
  for (const [at, { line, cells }] of sheet.rows.entries()) {
    const excerpt = cells.join(", ").slice(0, 160);
    const fate = (kind: "ignored" | "rejected" | "repaired", { code, text }: Remark): void =>
      void fates.push({ line, fate: kind, code, message: `Line ${line}: ${text}.`, excerpt });
    if (at <= heading) {
      fate(
        "ignored",
        at === heading
          ? { code: "heading", text: "the headings" }
          : { code: "before-heading", text: "stands above the headings" },
      );
      continue;
    }
    if (cells.every((cell) => cell === "")) {
      fate("ignored", { code: "blank-row", text: "blank" });
      continue;
    }
    const read = readRow(line, cells, mapping, building, units);
    if ("ignored" in read) fate("ignored", read.ignored);
    else if (read.faults.length > 0) fate("rejected", joined(read.faults));
    else {
      const first = firstLines.get(read.row.label);
      if (first !== undefined)
        fate("rejected", { code: "duplicate", text: `label ${read.row.label} stands in line ${first} already` });
      else {
        firstLines.set(read.row.label, line);
        rows.push(read.row);
        if (read.repairs.length > 0) fate("repaired", joined(read.repairs));
        else fates.push({ line, fate: "accepted" });
      }
    }
  }
  return { rows, fates };
}

const joined = (remarks: readonly Remark[]): Remark => ({
  code: remarks[0]?.code ?? "",
  text: remarks.map((remark) => remark.text).join("; "),
});

/** 1,000 where a heading says kW or mA says so for its column, else 1. */
function unitFactors(
  headings: readonly string[],
  { columns }: RegisterMapping,
): Partial<Record<RegisterField, number>> {
  const factors: Partial<Record<RegisterField, number>> = {};
  for (const field of ["nameplateW", "measuredW", "nameplateA"] as const) {
    const words = normalHeading(headings[columns[field] ?? -1] ?? "").split(" ");
    factors[field] = field === "nameplateA" ? (words.includes("ma") ? 0.001 : 1) : words.includes("kw") ? 1000 : 1;
  }
  return factors;
}

type Read = { row: RegisterRow; faults: Remark[]; repairs: Remark[] } | { ignored: Remark };

function readRow(
  line: number,
  cells: readonly string[],
  mapping: RegisterMapping,
  building: RegisterBuilding,
  units: Partial<Record<RegisterField, number>>,
): Read {
  const faults: Remark[] = [];
  const repairs: Remark[] = [];
  const textOf = (field: RegisterField): string => cells[mapping.columns[field] ?? -1] ?? "";
  const numberOf = (field: RegisterField, what: string, most: number): number | null => {
    // People write "1500 W" in a cell: its own unit is no part of the number.
    const read = cellNumber(textOf(field).replace(/\s*(watts?|w|amps?|a|h)$/i, ""), false);
    if (read.status === "blank") return null;
    const value = read.status === "ok" ? read.value * (units[field] ?? 1) : Number.NaN;
    if (value >= 0 && value <= most) return value;
    const why = read.status === "wrong" ? read.why : `${textOf(field)} is outside 0 to ${most}`;
    faults.push({ code: "not-a-number", text: `${what}: ${why}` });
    return null;
  };

  const classText = textOf("deviceClass") || textOf("description") || textOf("kind");
  const deviceClass = mapping.classes[normalHeading(classText)] ?? "";
  if (deviceClass === LEAVE_OUT) return { ignored: { code: "left-out", text: `"${classText}" is left out` } };
  const known = building.classes.get(deviceClass);
  if (!known) {
    const text =
      classText === "" ? "the row does not say what sort of device it is" : `no class was chosen for "${classText}"`;
    faults.push({ code: "class-unknown", text });
  }
  const given = textOf("label");
  const label = /^\d+$/.test(given) ? `${mapping.labelPrefix}${given}` : given;
  if (label === "") faults.push({ code: "label-blank", text: "the row has no label" });
  else if (building.labels.has(label))
    return { ignored: { code: "already-there", text: `${label} is on the register already` } };
  const nameplateW = numberOf("nameplateW", "nameplate power", 5000);
  const measuredW = numberOf("measuredW", "measured power", 5000);
  if (nameplateW === null && measuredW === null && faults.length === 0)
    repairs.push({
      code: "power-blank",
      text: "no watts are given: its settings take the usual values of its class, and say so",
    });
  const foundOn = textOf("foundOn");
  if (foundOn !== "" && dayNumberFromLocalDate(foundOn) === null)
    repairs.push({ code: "date-not-read", text: `the date "${foundOn}" is no YYYY-MM-DD and was left out` });
  const row: RegisterRow = {
    line,
    label: label.slice(0, 60),
    deviceClass,
    kind: known?.kind ?? "space-heater",
    ...placeOf(textOf("zoneCode"), textOf("deskCode"), mapping, building, faults),
    make: textOf("make").slice(0, 80),
    model: textOf("model").slice(0, 80),
    nameplateW,
    nameplateA: numberOf("nameplateA", "nameplate current", 60),
    measuredW,
    hoursPerYear: numberOf("hoursPerYear", "hours a year", 8760),
    foundOn: dayNumberFromLocalDate(foundOn) === null ? null : foundOn,
    note: [textOf("description"), textOf("note")]
      .filter((text) => text !== "")
      .join("; ")
      .slice(0, 500),
  };
  return { row, faults, repairs };
}

function placeOf(
  zoneText: string,
  deskText: string,
  { defaultZoneCode }: RegisterMapping,
  { zoneCodes, zoneOfDesk }: RegisterBuilding,
  faults: Remark[],
): { zoneCode: string; deskCode: string | null } {
  const deskCode = deskText === "" ? null : deskText;
  const deskZone = deskCode === null ? undefined : zoneOfDesk.get(deskCode);
  if (deskCode !== null && deskZone === undefined)
    faults.push({
      code: "desk-unknown",
      text: `desk ${deskCode} does not exist in this building; add it first or correct the code`,
    });
  const zoneCode = zoneText || deskZone || defaultZoneCode;
  if (zoneCode === "") faults.push({ code: "zone-blank", text: "the row names neither a zone nor a desk" });
  else if (!zoneCodes.has(zoneCode))
    faults.push({
      code: "zone-unknown",
      text: `zone ${zoneCode} does not exist in this building; add it first or correct the code`,
    });
  else if (deskZone !== undefined && deskZone !== zoneCode)
    faults.push({
      code: "desk-in-other-zone",
      text: `desk ${deskCode} stands in zone ${deskZone}, but the row says ${zoneCode}`,
    });
  return { zoneCode, deskCode };
}
