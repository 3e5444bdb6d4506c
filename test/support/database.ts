import { openAppDatabase } from "@/db/client";
import { openResultStore } from "@/db/results";
import { openTrendStore } from "@/db/trends/store";
import { memoryUploads } from "@/db/uploads";
import type { Context } from "@/lib/services/context";
import { TEST_NOW } from "./test-clock";

/**
 * A context of its own for one test: an empty migrated database, an empty trend store, no results and no uploads, all in memory; a signed-in
 * facilities user and a clock that stands still at `TEST_NOW`. Any part can be given instead.
 */
export function testContext(overrides: Partial<Context> = {}): Context {
  return {
    db: overrides.db ?? openAppDatabase(":memory:"),
    trends: overrides.trends ?? openTrendStore(":memory:"),
    results: overrides.results ?? openResultStore(":memory:"),
    uploads: overrides.uploads ?? memoryUploads(),
    actor: overrides.actor ?? { kind: "user", id: "user-1", name: "Robin Vale", role: "facilities" },
    now: overrides.now ?? TEST_NOW,
  };
}
