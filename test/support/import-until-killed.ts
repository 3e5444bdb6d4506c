import { openTrendStore } from "@/db/trends/store";
import { syntheticYear } from "./synthetic-trends";

/*
 * A process for tests that end it in mid-write: imports the same trends into the store given until it is killed,
 * undoing them in between, and says `ready` when it begins.
 */
const [file = "", zones = "", days = ""] = process.argv.slice(2);
const store = openTrendStore(file);
const slices = [...syntheticYear({ zones: Number(zones), days: Number(days), seed: 7 })];
process.stdout.write("ready\n");
for (let run = 1; ; run++) {
  await store.write(slices, run);
  await store.undo(run);
}
