import { performance } from "node:perf_hooks";
import { inTransaction } from "@/db/client";
import { insertComfortReport } from "@/db/queries/comfort";
import { createBuilding } from "@/lib/services/buildings/save";
import { readInbox } from "@/lib/services/comfort-reports/inbox";
import { addDesk } from "@/lib/services/desks/save";
import { addZone } from "@/lib/services/zones/save";
import { seededRandom } from "@/lib/statistics/random";
import { buildingInputOf } from "@/test/factories/building";
import { testContext } from "@/test/support/database";
import { median } from "./median";
import { line, target } from "./targets";

const REPORTS = 10_000;
const ZONES = 60;

/** Server time of the inbox's list and its zones with 10,000 open reports in 60 zones. */
export async function benchInbox(): Promise<void> {
  const ctx = testContext();
  const buildingId = createBuilding(ctx, buildingInputOf());
  const places = Array.from({ length: ZONES }, (_, z) => {
    const zoneId = addZone(ctx, buildingId, { code: `Z-${z}` });
    const desks = Array.from({ length: 8 }, (_, d) =>
      addDesk(ctx, buildingId, { code: `D-${z}-${d}`, zoneCode: `Z-${z}` }),
    );
    return { zoneId, desks };
  });
  const random = seededRandom(1);
  inTransaction(ctx.db, (tx) => {
    for (let i = 0; i < REPORTS; i++) {
      const { zoneId = 0, desks = [] } = places[Math.floor(random() * ZONES)] ?? {};
      const thermalSensation = Math.floor(random() * 7) - 3;
      insertComfortReport(tx, {
        buildingId,
        zoneId,
        deskId: desks[Math.floor(random() * 10)] ?? null,
        reportedAtMs: ctx.now - Math.floor(random() * 365 * 86_400_000),
        thermalSensation,
        preference: thermalSensation < 0 ? "warmer" : thermalSensation > 0 ? "cooler" : "no-change",
        note: "It is as it was yesterday, and nobody came to look.",
      });
    }
  });
  for (const [what, wanted] of [
    ["first page", {}],
    ["last page", { page: 10_000 }],
    ["one zone", { zoneId: places[7]?.zoneId }],
  ] as const) {
    const times = Array.from({ length: 15 }, () => {
      const began = performance.now();
      readInbox(ctx, buildingId, wanted);
      return performance.now() - began;
    });
    target({ what: `inbox of ${REPORTS} reports, ${what}`, figure: median(times), limit: 150, unit: "ms" });
    line(`  slowest ${Math.max(...times).toFixed(1)} ms`);
  }
}
