import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { printCircumstances } from "./circumstances";
import { makeDataFolder } from "./data/data-folder";
import { TYPICAL } from "./data/trend-file";
import { benchAgain } from "./import-again";
import { benchFresh } from "./import-fresh";
import { benchLarge } from "./import-large";
import { benchWritten } from "./import-written";

/** Where an import bench works: made once, with a data folder of the building that each import begins from. */
export type Workplace = { folder: string; freshDataFolder(): string };

/** The whole import beside its peers; `--large` for a file of 2 GB, `--wide` or `--long` for one layout. */
export async function benchImport(args: string[]): Promise<void> {
  printCircumstances();
  const folder = mkdtempSync(path.join(process.env.BENCH_FOLDER ?? tmpdir(), "bench-import-"));
  const empty = path.join(folder, "empty");
  makeDataFolder(empty, TYPICAL.zones);
  let made = 0;
  const place: Workplace = {
    folder,
    freshDataFolder() {
      const copy = path.join(folder, `data-${made++}`);
      cpSync(empty, copy, { recursive: true });
      return copy;
    },
  };
  const layouts = (["wide", "long"] as const).filter(
    (layout) => args.includes(`--${layout}`) || !(args.includes("--wide") || args.includes("--long")),
  );
  try {
    for (const layout of layouts) {
      if (args.includes("--large")) await benchLarge(place, layout);
      else await benchFresh(place, layout, args.includes("--quick") ? 1 : 3);
    }
    if (!args.includes("--large")) await benchWritten(place, args.includes("--quick") ? 1 : 3);
    if (layouts.includes("wide") && !args.includes("--large"))
      await benchAgain(place, args.includes("--quick") ? 1 : 3);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
