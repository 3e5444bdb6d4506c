import path from "node:path";
import { openAppDatabase } from "@/db/client";
import { openResultStore } from "@/db/results";
import { openTrendStore } from "@/db/trends/store";
import { openUploadFolder } from "@/db/uploads";
import { createBuilding } from "@/lib/services/buildings/save";
import type { Context } from "@/lib/services/context";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "../../factories/building";
import { bringWeather } from "../../factories/office-records";
import { TIME_ZONE, zoneCode } from "./office-trends";

export type OpenContext = Context & { close(): void };

/** Opens the stores of a data folder as the command line does. */
export function openContext(folder: string): OpenContext {
  const db = openAppDatabase(path.join(folder, "app.db"));
  const trends = openTrendStore(path.join(folder, "trend.db"));
  const results = openResultStore(path.join(folder, "results.db"));
  return {
    db,
    trends,
    results,
    uploads: openUploadFolder(path.join(folder, "uploads")),
    actor: { kind: "command-line", name: "bench" },
    now: Date.now(),
    close() {
      results.close();
      trends.close();
      db.$client.close();
    },
  };
}

/** A data folder with one building, its zones and nothing else. The building has the id 1. */
export function makeDataFolder(folder: string, zones: number): void {
  addBuilding(folder, zones);
}

/** One more building with zones of the same codes. */
export function addBuilding(folder: string, zones: number): void {
  const ctx = openContext(folder);
  const building = createBuilding(ctx, buildingInputOf({ name: "Quarry Court", timeZone: TIME_ZONE }));
  for (let zone = 0; zone < zones; zone++)
    addZone(ctx, building, { code: zoneCode(zone), floor: String(Math.floor(zone / 10) + 1) });
  ctx.close();
}

/** A weather year for building 1, so that it has a cost. */
export function addWeather(folder: string): void {
  const ctx = openContext(folder);
  bringWeather({ ctx, buildingId: 1 });
  ctx.close();
}
