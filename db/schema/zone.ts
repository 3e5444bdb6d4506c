import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { building } from "./building";

/** Space served by one controller: a zone is not a room. */
export const zone = sqliteTable(
  "zone",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    /** Short name that people and trend points use, unique in the building: `2-14`. */
    code: text().notNull(),
    name: text().notNull().default(""),
    floor: text().notNull().default(""),
    floorAreaM2: real("floor_area_m2"),
    airHandler: text().notNull().default(""),
    designAirflowM3ps: real("design_airflow_m3ps"),
    minimumAirflowM3ps: real("minimum_airflow_m3ps"),
    /** Its own target zone air temperature; the building's where null. */
    targetZoneAirTempC: real("target_zone_air_temp_c"),
    /** What is being done to this zone already; empty when nothing is. */
    fixInProgress: text().notNull().default(""),
  },
  (t) => [
    uniqueIndex("zone_code").on(t.buildingId, t.code),
    check("zone_area", sql`${t.floorAreaM2} is null or ${t.floorAreaM2} > 0`),
    check("zone_design_airflow", sql`${t.designAirflowM3ps} is null or ${t.designAirflowM3ps} > 0`),
    check("zone_minimum_airflow", sql`${t.minimumAirflowM3ps} is null or ${t.minimumAirflowM3ps} >= 0`),
  ],
);

export const desk = sqliteTable(
  "desk",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id),
    code: text().notNull(),
    /** Its own floor; the zone's where empty. */
    floor: text().notNull().default(""),
    note: text().notNull().default(""),
  },
  (t) => [uniqueIndex("desk_code").on(t.buildingId, t.code)],
);
