import { z } from "zod";
import { listDevices } from "@/db/queries/devices";
import {
  findRegisterImport,
  listRegisterImports,
  type RegisterImportRow,
  updateRegisterImport,
} from "@/db/queries/register-imports";
import { listDesks, listZones } from "@/db/queries/zones";
import { DEVICE_CLASSES } from "@/lib/electrical/device-classes";
import { classTexts, headingRow, proposeClass } from "@/lib/importers/register/propose-register-mapping";
import {
  LEAVE_OUT,
  type RegisterBuilding,
  type RegisterRow,
  readRegister,
} from "@/lib/importers/register/read-register";
import { openRegisterFile, type RegisterSheet } from "@/lib/importers/register/register-grid";
import { REGISTER_FIELDS, type RegisterMapping } from "@/lib/importers/register/register-mapping";
import { normalHeading } from "@/lib/importers/tables/columns";
import type { RowFate } from "@/lib/importers/tables/table-read";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

/** A register on its way in with what would become of every row by the mapping as it stands. */
export type RegisterView = {
  register: RegisterImportRow;
  mapping: RegisterMapping;
  sheets: string[];
  headings: string[];
  /** Texts of the class column with the class chosen, "" where none is. */
  classes: { text: string; chosen: string }[];
  rows: RegisterRow[];
  fates: RowFate[];
};

export function readRegisterImports(ctx: Context, buildingId: number): RegisterImportRow[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listRegisterImports(ctx.db, buildingId);
}

export async function readRegisterView(ctx: Context, buildingId: number, importId: number): Promise<RegisterView> {
  requireFacilities(ctx);
  const register = findRegisterImport(ctx.db, buildingId, importId);
  const mapping = register?.mapping;
  if (!register || !mapping) throw new ServiceError("not-found", "This file does not exist.");
  const sheets = await sheetsOf(ctx, register);
  const sheet = sheetOf(sheets, mapping);
  return {
    register,
    mapping,
    sheets: sheets.map((each) => each.name),
    headings: sheet.rows[headingRow(sheet)]?.cells ?? [],
    classes: classTexts(sheet, mapping.columns).map((text) => ({
      text,
      chosen: mapping.classes[normalHeading(text)] ?? "",
    })),
    ...readRegister(sheet, mapping, registerBuilding(ctx, buildingId)),
  };
}

async function sheetsOf(ctx: Context, register: RegisterImportRow): Promise<RegisterSheet[]> {
  const bytes = ctx.uploads.read(register.sha256);
  if (!bytes) throw new ServiceError("gone", "The file itself is no longer kept: bring it in again.");
  const opened = await openRegisterFile({ name: register.fileName, bytes });
  if (opened.status === "refused") throw new ServiceError("invalid", opened.message);
  return opened.sheets;
}

function sheetOf(sheets: readonly RegisterSheet[], { sheet: name }: RegisterMapping): RegisterSheet {
  const found = sheets.find((sheet) => sheet.name === name) ?? sheets[0];
  if (!found) throw new ServiceError("invalid", "The file holds no sheet.");
  return found;
}

/** What rows of a register are held against. */
export function registerBuilding(ctx: Context, buildingId: number): RegisterBuilding {
  const zones = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  return {
    zoneCodes: new Set(zones.values()),
    zoneOfDesk: new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.code, zones.get(desk.zoneId) ?? ""])),
    classes: new Map(DEVICE_CLASSES.map(({ id, kind }) => [id, { kind }])),
    labels: new Set(listDevices(ctx.db, buildingId).map((device) => device.label)),
  };
}

const classIds = new Set([...DEVICE_CLASSES.map(({ id }) => id), LEAVE_OUT, ""]);
const mappingInput = z.object({
  sheet: z.string().max(100),
  columns: z.partialRecord(z.enum(REGISTER_FIELDS), z.number().int().min(0).max(16_383)),
  defaultZoneCode: z.string().trim().max(40),
  labelPrefix: z.string().trim().max(20, "Keep what stands before the numbers under 20 characters."),
  /** Class by the text of the file as it stands there. */
  classes: z.record(
    z.string(),
    z.string().refine((id) => classIds.has(id), "Choose a class of the list."),
  ),
});

export type RegisterMappingInput = z.input<typeof mappingInput>;

/** Keeps what someone says of the columns. One column cannot be two things. Texts that are new get their proposal. */
export async function changeRegisterMapping(
  ctx: Context,
  buildingId: number,
  importId: number,
  input: RegisterMappingInput,
): Promise<void> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const register = findRegisterImport(ctx.db, buildingId, importId);
  if (!register) throw new ServiceError("not-found", "This file does not exist.");
  if (register.importRunId !== null)
    throw new ServiceError("conflict", "This file has been taken: bring it in again to map it anew.");
  const said = parseInput(mappingInput, input);
  const used = new Map<number, string>();
  for (const [field, at] of Object.entries(said.columns)) {
    const other = used.get(at);
    if (other) {
      const message = `This column is ${other} already: a column can be one thing only.`;
      throw new ServiceError("invalid", message, { [`column.${field}`]: message });
    }
    used.set(at, field);
  }
  const sheet = sheetOf(await sheetsOf(ctx, register), { ...said, classes: {} });
  const chosen = new Map(Object.entries(said.classes).map(([text, id]) => [normalHeading(text), id]));
  const classes = Object.fromEntries(
    classTexts(sheet, said.columns).map((text) => {
      const key = normalHeading(text);
      return [key, chosen.get(key) ?? proposeClass(text, building.mainsVoltageV)];
    }),
  );
  updateRegisterImport(ctx.db, importId, { mapping: { ...said, classes } });
}
