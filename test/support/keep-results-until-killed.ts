import { openResultStore } from "@/db/results";

/*
 * A process for tests that end it in mid-write: keeps one result after the other, each a hundred kilobytes of its own number,
 * until it is killed, and says `ready` when it begins.
 */
const results = openResultStore(process.argv[2] ?? "");
process.stdout.write("ready\n");
for (let n = 0; ; n++) {
  const result = new Array(20_000).fill(n);
  results.save({ buildingId: 1, subject: "shown/zones", restsOn: String(n), workedOutAtMs: n, result });
}
