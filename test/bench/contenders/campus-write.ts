import { statSync } from "node:fs";
import path from "node:path";
import { campusSlices, makeCampusPoints } from "../data/campus";
import { openContext } from "../data/data-folder";
import { contend, timed } from "./contend";

export type CampusInput = { dataFolder: string; days: number };
export type CampusWritten = { ms: number; cpuMs: number; peakMb: number; readings: number; bytes: number };

/** The points and samples of building 1, written slice by slice as an import would; the time includes inventing them. */
await contend<CampusInput>(async ({ dataFolder, days }) => {
  const ctx = openContext(dataFolder);
  let readings = 0;
  const points = makeCampusPoints(ctx, 1);
  const ms = await timed(async () => {
    readings = (await ctx.trends.write(campusSlices(points, days), 1)).added;
  });
  ctx.close();
  return { ms, readings, bytes: statSync(path.join(dataFolder, "trend.db")).size };
});
