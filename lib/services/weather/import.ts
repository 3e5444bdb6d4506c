import { createHash } from "node:crypto";
import { inTransaction } from "@/db/client";
import { insertImportRun } from "@/db/queries/import-runs";
import { findWeatherYear, replaceWeatherYear, type WeatherYearRow } from "@/db/queries/weather";
import { readWeatherFile } from "@/lib/importers/weather/read-weather-file";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

export type WeatherImportResult = { state: "imported" | "unchanged"; station: string };

/** Takes an EPW or TMY3 file as the building's weather year. The same file again changes nothing. */
export function importWeather(
  ctx: Context,
  buildingId: number,
  file: { name: string; bytes: Uint8Array },
): WeatherImportResult {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const sha256 = createHash("sha256").update(file.bytes).digest("hex");
  const present = findWeatherYear(ctx.db, buildingId);
  if (present?.sha256 === sha256) return { state: "unchanged", station: present.station };
  const run = {
    buildingId,
    kind: "weather" as const,
    fileName: file.name,
    sha256,
    byteCount: file.bytes.byteLength,
    startedAtMs: ctx.now,
    finishedAtMs: ctx.now,
    startedBy: actorName(actor),
  };
  const reading = readWeatherFile({ fileName: file.name, bytes: file.bytes });
  if (reading.status === "refused") {
    insertImportRun(ctx.db, { ...run, state: "refused", message: reading.message });
    throw new ServiceError("invalid", reading.message, { file: reading.message });
  }
  inTransaction(ctx.db, (tx) => {
    replaceWeatherYear(tx, {
      buildingId,
      fileName: file.name,
      format: reading.format,
      sha256,
      station: reading.station,
      latitude: reading.latitude,
      longitude: reading.longitude,
      utcOffsetHours: reading.utcOffsetHours,
      dryBulbTenthsC: packTenths(reading.dryBulbC),
      importedAtMs: ctx.now,
    });
    insertImportRun(tx, {
      ...run,
      state: "done",
      message: `Weather year of ${reading.station}: 8,760 hours.`,
      rowsInFile: reading.dryBulbC.length,
      rowsAccepted: reading.dryBulbC.length,
      inspection: { findings: reading.findings },
    });
  });
  return { state: "imported", station: reading.station };
}

function packTenths(dryBulbC: ArrayLike<number>): Buffer {
  const buffer = Buffer.alloc(dryBulbC.length * 2);
  for (let i = 0; i < dryBulbC.length; i++) buffer.writeInt16LE(Math.round((dryBulbC[i] as number) * 10), i * 2);
  return buffer;
}

/** Dry-bulb temperatures of a stored weather year, in °C; hour-ending, local standard time. */
export function unpackDryBulbC(row: Pick<WeatherYearRow, "dryBulbTenthsC">): Float64Array {
  const { dryBulbTenthsC: buffer } = row;
  return Float64Array.from({ length: buffer.length / 2 }, (_, i) => buffer.readInt16LE(i * 2) / 10);
}
