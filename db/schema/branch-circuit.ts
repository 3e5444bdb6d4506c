import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { CIRCUIT_WIRINGS, RULE_SET_IDS } from "@/lib/electrical/circuit/circuit-kinds";
import { building } from "./building";

/** A branch circuit from its breaker on: what it may carry and what hangs on it beside the devices of the register. */
export const branchCircuit = sqliteTable(
  "branch_circuit",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    panel: text().notNull(),
    circuit: text().notNull(),
    /** As the panel names it: `A`, `L1`, or two of them for a load between legs. */
    leg: text().notNull().default(""),
    breakerRatingA: real(),
    voltageV: real(),
    receptacleRatingA: real(),
    wiring: text({ enum: CIRCUIT_WIRINGS }).notNull().default("radial"),
    /** False for a circuit that feeds one outlet alone. */
    multiOutlet: integer({ mode: "boolean" }).notNull().default(true),
    /** Breaker and its enclosure are listed to carry their whole rating without end. */
    listedFor100Percent: integer("listed_for_100_percent", { mode: "boolean" }).notNull().default(false),
    /** Load of everything that is not on the register; null while nobody knows it. */
    baseContinuousA: real(),
    baseNonContinuousA: real(),
    /** Where the base load comes from. */
    baseLoadNote: text().notNull().default(""),
    /** Null while nobody has looked. */
    sharedNeutral: integer({ mode: "boolean" }),
    ruleSet: text({ enum: RULE_SET_IDS }).notNull(),
    /** When and how often it has tripped, as told; empty when nothing is known. */
    tripNote: text().notNull().default(""),
    note: text().notNull().default(""),
    createdAtMs: integer().notNull(),
    updatedAtMs: integer().notNull(),
  },
  (t) => [
    uniqueIndex("branch_circuit_name").on(t.buildingId, t.panel, t.circuit),
    check("branch_circuit_breaker", sql`${t.breakerRatingA} is null or ${t.breakerRatingA} between 1 and 200`),
    check("branch_circuit_voltage", sql`${t.voltageV} is null or ${t.voltageV} between 50 and 480`),
    check("branch_circuit_receptacle", sql`${t.receptacleRatingA} is null or ${t.receptacleRatingA} between 1 and 100`),
    check(
      "branch_circuit_base",
      sql`coalesce(${t.baseContinuousA}, 0) >= 0 and coalesce(${t.baseNonContinuousA}, 0) >= 0`,
    ),
  ],
);
