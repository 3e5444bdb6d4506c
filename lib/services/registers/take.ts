import { inTransaction } from "@/db/client";
import { type ImportRunRow, insertImportRows, insertImportRun } from "@/db/queries/import-runs";
import { updateRegisterImport } from "@/db/queries/register-imports";
import { deviceClassById } from "@/lib/electrical/device-classes";
import type { RegisterRow } from "@/lib/importers/register/read-register";
import type { RowFate } from "@/lib/importers/tables/table-read";
import { localDateAt } from "@/lib/time/local-date";
import { counted } from "@/lib/units/counted";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import type { DeviceInput } from "../devices/device-input";
import { registerDevice } from "../devices/register";
import { ServiceError } from "../errors";
import { readRegisterView } from "./mapping";

/**
 * Registers the devices of a file by its mapping. Rows that the register itself refuses are rejected with its reason, the
 * others are taken; every row's fate is kept with the import. A file is taken once.
 */
export async function takeRegister(ctx: Context, buildingId: number, importId: number): Promise<ImportRunRow> {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const { register, rows, fates, mapping } = await readRegisterView(ctx, buildingId, importId);
  if (register.importRunId !== null) throw new ServiceError("conflict", "This file has been taken already.");
  if (rows.length === 0)
    throw new ServiceError("precondition", "No row can be taken as the columns are mapped: look at the reasons below.");
  const site = { today: localDateAt(ctx.now, building.timeZone), voltageV: building.mainsVoltageV };
  return inTransaction(ctx.db, (tx) => {
    const settled = new Map(fates.map((fate) => [fate.line, fate]));
    for (const row of rows) {
      const refusal = tryRegister(ctx, buildingId, row, site);
      if (refusal === null) continue;
      const message = `Line ${row.line}: ${refusal.replace(/\.$/, "")}.`;
      settled.set(row.line, {
        line: row.line,
        fate: "rejected",
        code: "refused-by-register",
        message,
        excerpt: row.label,
      });
    }
    const all = [...settled.values()].sort((a, b) => a.line - b.line);
    const count = (fate: RowFate["fate"]): number => all.filter((each) => each.fate === fate).length;
    const added = count("accepted") + count("repaired");
    const run = insertImportRun(tx, {
      buildingId,
      kind: "devices",
      fileName: register.fileName,
      sha256: register.sha256,
      byteCount: register.byteCount,
      state: "done",
      message: `${counted(added, "device")} added from a register${count("rejected") > 0 ? `; ${counted(count("rejected"), "row")} not taken, listed below with the reason` : ""}.`,
      rowsInFile: all.length,
      rowsAccepted: count("accepted"),
      rowsRepaired: count("repaired"),
      rowsRejected: count("rejected"),
      rowsIgnored: count("ignored"),
      samplesAdded: added,
      answers: mapping,
      startedAtMs: ctx.now,
      finishedAtMs: ctx.now,
      startedBy: actorName(actor),
    });
    insertImportRows(
      tx,
      run.id,
      all.flatMap((each) =>
        each.fate === "accepted" ? [] : { line: each.line, fate: each.fate, code: each.code, excerpt: each.message },
      ),
    );
    updateRegisterImport(tx, importId, { importRunId: run.id });
    return run;
  });
}

/** Registers one row; what the register refuses comes back as its reason. */
function tryRegister(ctx: Context, buildingId: number, row: RegisterRow, site: Site): string | null {
  try {
    registerDevice(ctx, buildingId, deviceInputOf(row, site));
    return null;
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return Object.values(error.fieldErrors)[0] ?? error.message;
  }
}

type Site = { today: string; voltageV: number };

/**
 * The highest setting takes what the file says: measured watts as of a plug-in meter, else the nameplate's. All others
 * take the usual values of the class, and say so.
 */
function deviceInputOf(row: RegisterRow, site: Site): DeviceInput {
  const deviceClass = deviceClassById(row.deviceClass);
  if (!deviceClass) throw new Error(`class ${row.deviceClass} was accepted and is not there`);
  const last = deviceClass.settings.length - 1;
  const { label, kind, zoneCode, make, model, nameplateW, nameplateA, note } = row;
  return {
    label,
    kind,
    deviceClass: deviceClass.id,
    zoneCode,
    deskCode: row.deskCode ?? "",
    make,
    model,
    nameplateW,
    nameplateA,
    note,
    hasThermostat: kind === "space-heater" && !deviceClass.isContact,
    foundOn: row.foundOn ?? site.today,
    settings: deviceClass.settings.map(({ name }, at) => {
      const use = { name, voltageV: site.voltageV, hoursPerYear: at === last ? (row.hoursPerYear ?? 0) : 0 };
      if (at === last && row.measuredW !== null) return { ...use, basis: "plug-meter" as const, powerW: row.measuredW };
      if (at === last && nameplateW !== null) return { ...use, basis: "nameplate" as const, nameplateW };
      return { ...use, basis: "class-default" as const };
    }),
  };
}
