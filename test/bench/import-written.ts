import { rmSync } from "node:fs";
import path from "node:path";
import { agree } from "./agree";
import { type Outcome, runContender } from "./contender";
import type { ProductOutcome } from "./contenders/product-outcome";
import { type TrendFileShape, TYPICAL, writeTrendFile } from "./data/trend-file";
import type { Workplace } from "./import";
import { median } from "./median";
import { line, target } from "./targets";

/** The same year in other ways of writing it. */
const WAYS: Record<string, Pick<TrendFileShape, "layout" | "fields">> = {
  "wide, quoted": { layout: "wide", fields: "quoted" },
  "long, quoted": { layout: "long", fields: "quoted" },
  "long, three fields": { layout: "long", fields: "bare" },
};

/** How files are written must not decide how long they take: the same readings with quotes, and without units and statuses. */
export async function benchWritten(place: Workplace, rounds: number): Promise<void> {
  line(`\nthe same year written in other ways; ${rounds} rounds`);
  for (const [name, way] of Object.entries(WAYS)) {
    const file = path.join(place.folder, "written.csv");
    const written = writeTrendFile(file, { ...TYPICAL, ...way });
    const outcomes: { product: ProductOutcome; peer: Outcome }[] = [];
    for (let round = 0; round < rounds; round++) {
      const dataFolder = place.freshDataFolder();
      const product = await runContender<ProductOutcome>("import-product", { dataFolder, files: [file] });
      rmSync(dataFolder, { recursive: true });
      const heldBack = way.layout === "long" ? (product.rows?.heldBack ?? 0) : 0;
      agree("readings stored and readings in the file", product.samples?.added, written.readings - heldBack);
      const database = path.join(place.folder, "written.db");
      const peer = await runContender("import-duckdb", { file, database });
      rmSync(database);
      outcomes.push({ product, peer });
    }
    rmSync(file);
    const ms = median(outcomes.map(({ product }) => product.ms));
    const ratio = median(outcomes.map(({ product, peer }) => product.ms / peer.ms));
    line(
      `  ${name.padEnd(20)} ${(written.bytes / 1e6).toFixed(0).padStart(4)} MB  ${ms.toFixed(0).padStart(6)} ms  ` +
        `${ratio.toFixed(2)} of read_csv (${median(outcomes.map(({ peer }) => peer.ms)).toFixed(0)} ms)`,
    );
    const figure = written.readings / ms / 1000;
    target({ what: `${name}: import`, figure, limit: 3, atLeast: true, unit: "M readings/s" });
  }
}
