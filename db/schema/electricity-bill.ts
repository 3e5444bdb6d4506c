import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { building } from "./building";

/** What one bill says of a building's electricity. */
export const electricityBill = sqliteTable(
  "electricity_bill",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    /** First day of the bill, `YYYY-MM-DD`. */
    fromDate: text().notNull(),
    /** First day that it does not cover. */
    untilDate: text().notNull(),
    energyKwh: real().notNull(),
    billedDemandKw: real(),
    /** Major units of the building's currency, all charges together. */
    charges: real(),
  },
  (t) => [
    uniqueIndex("electricity_bill_from").on(t.buildingId, t.fromDate),
    check("electricity_bill_days", sql`${t.fromDate} < ${t.untilDate}`),
    check("electricity_bill_energy", sql`${t.energyKwh} >= 0`),
    check("electricity_bill_demand", sql`${t.billedDemandKw} is null or ${t.billedDemandKw} >= 0`),
  ],
);
