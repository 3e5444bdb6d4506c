import { integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import type { TariffBlock, TariffPeriod } from "@/lib/finance/tariff";
import { building } from "./building";

/** How electricity is billed beyond one marginal price: one tariff a building at most. */
export const tariff = sqliteTable("tariff", {
  buildingId: integer()
    .primaryKey()
    .references(() => building.id, { onDelete: "cascade" }),
  energyKind: text({ enum: ["one-price", "time-of-use", "blocks"] }).notNull(),
  /** In the order in which they count; prices in major units of the building's currency. */
  periods: text({ mode: "json" }).$type<TariffPeriod[]>().notNull(),
  blocks: text({ mode: "json" }).$type<TariffBlock[]>().notNull(),
  /** A year of bills, January to December, or null. */
  bills: text({ mode: "json" }).$type<{ energyKwh: number; demandKw: number }[] | null>(),
  /** Share of the year's highest peak that every month is billed at least; null without a ratchet. */
  ratchetFraction: real(),
  enteredBy: text().notNull(),
  enteredAtMs: integer().notNull(),
});
