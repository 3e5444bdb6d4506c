import { rmSync } from "node:fs";
import path from "node:path";
import { agree } from "./agree";
import { runContender } from "./contender";
import type { ProductOutcome } from "./contenders/product-outcome";
import { makeDataFolder } from "./data/data-folder";
import { TYPICAL, writeTrendFile } from "./data/trend-file";
import type { Workplace } from "./import";
import { line, target, unmeasured } from "./targets";

/** About 2 GB each: long rows of 60 zones over 8 years, wide rows of 240 zones over 19 years. */
const SHAPES = {
  wide: { zones: 240, toDay: 365 * 19 },
  long: { zones: 60, toDay: 365 * 7.8 },
} as const;

/** One file of about 2 GB: memory must not grow with it. */
export async function benchLarge(place: Workplace, layout: "wide" | "long"): Promise<void> {
  const { zones, toDay } = SHAPES[layout];
  const file = path.join(place.folder, `large-${layout}.csv`);
  const written = writeTrendFile(file, { ...TYPICAL, layout, zones, toDay });
  line(
    `\n${layout} file of ${(written.bytes / 1e9).toFixed(2)} GB: ${written.readings} readings in ${written.rows} rows; once`,
  );
  const dataFolder = path.join(place.folder, "large");
  makeDataFolder(dataFolder, zones);
  const done = await runContender<ProductOutcome>("import-product", { dataFolder, files: [file] });
  rmSync(dataFolder, { recursive: true });
  rmSync(file);
  if (done.outcome !== "imported") {
    unmeasured(`large ${layout} file`, `the import said: ${done.message}`);
    return;
  }
  const added = done.samples?.added ?? 0;
  line(`  ${(done.ms / 1000).toFixed(1)} s, ${added} samples added, ${(done.bytes / added).toFixed(2)} bytes/reading`);
  const heldBack = layout === "long" ? (done.rows?.heldBack ?? 0) : 0;
  agree("readings stored and readings in the file", added, written.readings - heldBack);
  target({ what: `large ${layout} file: peak memory`, figure: done.peakMb, limit: 350, unit: "MB" });
  target({
    what: `large ${layout} file`,
    figure: added / done.ms / 1000,
    limit: 3,
    atLeast: true,
    unit: "M readings/s",
  });
}
