import { listDevices } from "@/db/queries/devices";
import { listZones } from "@/db/queries/zones";
import { readRegister } from "@/lib/services/devices/list/read-register";
import { registerQuery } from "@/lib/services/devices/list/register-query";
import type { Outcome } from "../contender";
import { openContext } from "../data/data-folder";
import { fillRegister } from "../data/large-register";
import { medianMs } from "../stopwatch";
import { contend } from "./contend";
import { medianRound } from "./cpu-time";

export type RegisterOutcome = Outcome & {
  bareMs: number;
  /** The first of all reads, when every figure is worked out. */
  firstMs: number;
  reads: { what: string; cpuMs: number; wallMs: number; afterWriteMs: number; rows: number }[];
};

const QUERIES: readonly [string, Record<string, string>][] = [
  ["as it opens", {}],
  ["filtered by zone", { zone: "3-7" }],
  ["filtered by sort and words", { class: "fan-heater-1500", q: "x-000" }],
  ["ordered by cost, downwards", { sort: "cost", order: "down" }],
  ["ordered by zone", { sort: "zone" }],
  ["grouped by zone, ordered by energy", { group: "zone", sort: "energy", order: "down" }],
  ["grouped by origin, removed ones too", { group: "origin", status: "all" }],
  ["open inspections, last page", { condition: "correct-first", page: "99" }],
];

/** Reads pages of a large register as the page does, all but the markup. */
await contend<{ dataFolder: string; devices: number }>(async ({ dataFolder, devices }) => {
  const ctx = openContext(dataFolder);
  const zoneIds = listZones(ctx.db, 1).map(({ id }) => id);
  fillRegister(ctx.db, 1, zoneIds, devices);
  const bareMs = medianRound(5, () =>
    listDevices(ctx.db, 1).reduce((sum, each) => sum + each.settings.length, 0),
  ).threadMs;
  const start = performance.now();
  readRegister(ctx, 1, registerQuery({}));
  const firstMs = performance.now() - start;
  const touch = ctx.db.$client.prepare("update device set updated_at_ms = updated_at_ms + 1 where id = 1");
  const reads: RegisterOutcome["reads"] = [];
  for (const [what, words] of QUERIES) {
    const query = registerQuery(words);
    const read = () => readRegister(ctx, 1, query);
    const afterWrite = () => {
      touch.run();
      return read();
    };
    reads.push({
      what,
      cpuMs: medianRound(7, read).threadMs,
      wallMs: await medianMs(7, read),
      afterWriteMs: medianRound(7, afterWrite).threadMs,
      rows: read().count,
    });
  }
  ctx.close();
  return { bareMs, firstMs, reads };
});
