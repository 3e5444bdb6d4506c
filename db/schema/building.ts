import { sql } from "drizzle-orm";
import { check, integer, primaryKey, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { HEATING_FUELS, SYSTEM_TYPES } from "@/lib/assumptions/system-type";

export const building = sqliteTable(
  "building",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    name: text().notNull(),
    timeZone: text().notNull(),
    /** ISO 4217. */
    currency: text().notNull(),
    temperatureUnit: text({ enum: ["C", "F"] }).notNull(),
    areaUnit: text({ enum: ["m2", "ft2"] }).notNull(),
    floorAreaM2: real("floor_area_m2").notNull(),
    systemType: text({ enum: SYSTEM_TYPES }).notNull(),
    hasEconomizer: integer({ mode: "boolean" }).notNull().default(true),
    heatingFuel: text({ enum: HEATING_FUELS }).notNull().default("gas"),
    /** Which price is given; a demand charge goes with a marginal price only. */
    electricityPriceKind: text({ enum: ["marginal", "blended"] }).notNull(),
    /** Major currency units per kWh. */
    electricityPricePerKwh: real().notNull(),
    demandPricePerKw: real(),
    demandMonths: integer(),
    heatPricePerKwh: real(),
    /** What one complaint costs: hours of staff and their rate. Both or neither: the tool has no default. */
    complaintHours: real(),
    labourPricePerHour: real(),
    targetZoneAirTempC: real().notNull().default(23),
    /** Cooling setpoint that people say is in force, used until trends say better. */
    presentCoolingSetpointC: real(),
    mainsVoltageV: real().notNull().default(120),
    createdAtMs: integer().notNull(),
    updatedAtMs: integer().notNull(),
  },
  (t) => [
    check("building_area", sql`${t.floorAreaM2} > 0`),
    check("building_price", sql`${t.electricityPricePerKwh} >= 0`),
    check(
      "building_demand",
      sql`${t.demandPricePerKw} is null or (${t.electricityPriceKind} = 'marginal' and ${t.demandPricePerKw} >= 0)`,
    ),
    check("building_target", sql`${t.targetZoneAirTempC} between 15 and 32`),
  ],
);

export const occupiedInterval = sqliteTable(
  "occupied_interval",
  {
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    /** ISO weekday, 1 Monday to 7 Sunday. */
    weekday: integer().notNull(),
    /** Minutes after local midnight. */
    startMinute: integer().notNull(),
    endMinute: integer().notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.buildingId, t.weekday, t.startMinute] }),
    check("occupied_weekday", sql`${t.weekday} between 1 and 7`),
    check(
      "occupied_order",
      sql`${t.startMinute} >= 0 and ${t.endMinute} <= 1440 and ${t.startMinute} < ${t.endMinute}`,
    ),
  ],
);

export const holiday = sqliteTable(
  "holiday",
  {
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    /** `YYYY-MM-DD`. */
    date: text().notNull(),
    name: text().notNull().default(""),
  },
  (t) => [primaryKey({ columns: [t.buildingId, t.date] })],
);
