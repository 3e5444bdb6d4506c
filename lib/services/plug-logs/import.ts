import { createHash } from "node:crypto";
import { gunzipSync } from "node:zlib";
import { z } from "zod";
import { findOccupiedHours } from "@/db/queries/buildings";
import { findPlugLogByFile, insertPlugLog, type PlugLogRow } from "@/db/queries/plug-logs";
import type { RecordedSetting } from "@/lib/electrical/plug-log/match-settings";
import { reducePlugLog } from "@/lib/electrical/plug-log/reduce-plug-log";
import { PLUG_UNITS } from "@/lib/importers/plug-log/plug-quantity";
import { readPlugLog } from "@/lib/importers/plug-log/read-plug-log";
import { zoneTable } from "@/lib/time/zone-table";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { type DeviceView, readDevice } from "../devices/read";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

/** Largest file that is read, packed and unpacked [bytes]: two weeks at one second are 30 MB. */
export const LARGEST_PLUG_FILE_BYTES = 60_000_000;

const answersInput = z.object({
  unit: z
    .string()
    .trim()
    .toLowerCase()
    .transform((unit) => unit || null)
    .refine((unit) => unit === null || unit in PLUG_UNITS, "Choose W, kW, A, Wh or kWh.")
    .default(null),
  dateOrder: z.enum(["dmy", "mdy"]).nullable().default(null),
  energy: z.enum(["counter", "step"]).nullable().default(null),
});

export type PlugLogAnswersInput = z.input<typeof answersInput>;

/** What became of a file: imported, there already, or a question that the file leaves open. */
export type PlugLogOutcome =
  | { state: "imported" | "unchanged"; logId: number; message: string }
  | { state: "ask"; question: "unit" | "date-order" | "energy"; message: string };

/**
 * Takes a plug logger's file for a device: reads it, reduces it to its figures and keeps the file itself for review only.
 * The same file again changes nothing. Refused with the reason when it cannot be read.
 */
export async function importPlugLog(
  ctx: Context,
  buildingId: number,
  deviceId: number,
  file: { name: string; bytes: Uint8Array },
  answers: PlugLogAnswersInput = {},
): Promise<PlugLogOutcome> {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const device = readDevice(ctx, buildingId, deviceId);
  const sha256 = createHash("sha256").update(file.bytes).digest("hex");
  const present = findPlugLogByFile(ctx.db, deviceId, sha256);
  if (present) return { state: "unchanged", logId: present.id, message: "This very file is on record already." };
  const zone = zoneTable(building.timeZone);
  const said = parseInput(answersInput, answers);
  const read = readPlugLog({ bytes: unpacked(file) }, { zone, voltageV: building.mainsVoltageV }, said);
  if (read.status === "ask") return { state: "ask", question: read.question, message: read.message };
  if (read.status === "refused") throw new ServiceError("invalid", read.message, { file: read.message });
  const reduced = reducePlugLog(read, {
    occupiedHours: findOccupiedHours(ctx.db, buildingId),
    zone,
    settings: recordedSettings(device),
  });
  const { byteCount } = await ctx.uploads.saveFrom([file.bytes]);
  const { unit, quantity, rows, findings: readFindings, notes } = read;
  const row = insertPlugLog(ctx.db, {
    buildingId,
    deviceId,
    fileName: file.name,
    sha256,
    byteCount,
    ...spanOf(read.tsUtcSeconds, reduced.usualStepSeconds),
    energyKwh: reduced.energyKwh,
    figures: { ...reduced, unit, quantity, rows, readFindings: [...readFindings], notes: [...notes] },
    importedAtMs: ctx.now,
    importedBy: actorName(actor),
  });
  return { state: "imported", logId: row.id, message: importedSentence(row) };
}

function spanOf(tsUtcSeconds: Float64Array, stepSeconds: number): { fromMs: number; toMs: number } {
  const last = tsUtcSeconds[tsUtcSeconds.length - 1] as number;
  return { fromMs: (tsUtcSeconds[0] as number) * 1000, toMs: Math.round((last + stepSeconds) * 1000) };
}

const importedSentence = ({ figures }: PlugLogRow): string =>
  `${figures.rows.accepted} readings taken, reduced to their figures.`;

/** Settings of the register with the watts that its sheet gives them. */
function recordedSettings(device: DeviceView): RecordedSetting[] {
  const basisOf = new Map(device.settings.map((setting) => [setting.name, setting.basis]));
  return device.sheet.lines.flatMap(({ name, power }) =>
    power.status === "ok" ? [{ name, onRecordW: power.powerW.value, basis: basisOf.get(name) ?? "class-default" }] : [],
  );
}

function unpacked({ bytes }: { bytes: Uint8Array }): Uint8Array {
  const tooLarge = `The file is over ${LARGEST_PLUG_FILE_BYTES / 1e6} MB: bring it in week by week.`;
  if (bytes.byteLength === 0)
    throw new ServiceError("invalid", "The file is empty: export it again.", { file: "Empty." });
  if (bytes.byteLength > LARGEST_PLUG_FILE_BYTES) throw new ServiceError("too-large", tooLarge, { file: tooLarge });
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes;
  try {
    return gunzipSync(bytes, { maxOutputLength: LARGEST_PLUG_FILE_BYTES });
  } catch (error) {
    const isLarge = error instanceof RangeError || (error as { code?: string }).code === "ERR_BUFFER_TOO_LARGE";
    const message = isLarge ? tooLarge : "The gzip archive is damaged: copy it from the logger again.";
    throw new ServiceError(isLarge ? "too-large" : "invalid", message, { file: message });
  }
}
