import { createHash } from "node:crypto";
import type { AppTransaction } from "../client";
import { importRun } from "../schema/trend-import";
import { weatherYear } from "../schema/weather";
import { DEMO_AUTHOR } from "./demo-building";
import type { DemoWeather } from "./demo-weather";

/** The weather year of the building and the run that took it in, as an import of the same file would leave them. */
export function writeWeather(
  tx: AppTransaction,
  { buildingId, weather, now }: { buildingId: number; weather: DemoWeather; now: number },
): void {
  const { fileName, bytes, station, latitude, longitude, utcOffsetHours, dryBulbC } = weather;
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const dryBulbTenthsC = Buffer.alloc(2 * dryBulbC.length);
  for (const [hour, tempC] of dryBulbC.entries()) dryBulbTenthsC.writeInt16LE(Math.round(10 * tempC), 2 * hour);
  tx.insert(weatherYear)
    .values({
      buildingId,
      fileName,
      format: "tmy3",
      sha256,
      station,
      latitude,
      longitude,
      utcOffsetHours,
      dryBulbTenthsC,
      importedAtMs: now,
    })
    .run();
  tx.insert(importRun)
    .values({
      buildingId,
      kind: "weather",
      fileName,
      sha256,
      byteCount: bytes.byteLength,
      state: "done",
      message: `Weather year of ${station}: 8,760 hours.`,
      rowsInFile: dryBulbC.length,
      rowsAccepted: dryBulbC.length,
      startedAtMs: now,
      finishedAtMs: now,
      startedBy: DEMO_AUTHOR,
    })
    .run();
}
