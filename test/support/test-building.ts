import type { Queryable } from "@/db/client";
import { building } from "@/db/schema/building";
import { TEST_NOW } from "./test-clock";

/** A plain building for tests that need one to hang rows on; returns its id. */
export function insertTestBuilding(db: Queryable, overrides: Partial<typeof building.$inferInsert> = {}): number {
  const row = {
    name: "Harbour Court",
    timeZone: "America/New_York",
    currency: "USD",
    temperatureUnit: "F" as const,
    areaUnit: "ft2" as const,
    floorAreaM2: 4200,
    systemType: "vav-reheat-minimum-unknown" as const,
    electricityPriceKind: "marginal" as const,
    electricityPricePerKwh: 0.13,
    createdAtMs: TEST_NOW,
    updatedAtMs: TEST_NOW,
    ...overrides,
  };
  return db.insert(building).values(row).returning({ id: building.id }).get().id;
}
