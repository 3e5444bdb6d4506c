import { openAppDatabase } from "@/db/client";
import { openTrendStore } from "@/db/trends/store";
import type { Context } from "@/lib/services/context";

/** 2025-07-01T12:00:00Z, a Tuesday. */
export const TEST_NOW = 1_751_371_200_000;

/**
 * A context of its own for one test: an empty migrated database and an empty trend store, both in memory, a signed-in
 * facilities user and a clock that stands still at `TEST_NOW`. Any part can be given instead.
 */
export function testContext(overrides: Partial<Context> = {}): Context {
  return {
    db: overrides.db ?? openAppDatabase(":memory:"),
    trends: overrides.trends ?? openTrendStore(":memory:"),
    actor: overrides.actor ?? { kind: "user", id: "user-1", name: "Robin Vale", role: "facilities" },
    now: overrides.now ?? TEST_NOW,
  };
}
