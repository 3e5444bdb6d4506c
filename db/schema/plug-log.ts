import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import type { PlugLogFigures } from "@/lib/electrical/plug-log/plug-log-figures";
import { building } from "./building";
import { device } from "./device";

/**
 * A plug logger's file, reduced to its figures and a profile of the day. The file itself is kept among the uploads until
 * it has been reviewed, since its intervals show when someone was at a desk.
 */
export const plugLog = sqliteTable(
  "plug_log",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    deviceId: integer()
      .notNull()
      .references(() => device.id, { onDelete: "cascade" }),
    fileName: text().notNull(),
    sha256: text("sha256").notNull(),
    byteCount: integer().notNull(),
    /** First reading and the end of the last one. */
    fromMs: integer().notNull(),
    toMs: integer().notNull(),
    energyKwh: real().notNull(),
    figures: text({ mode: "json" }).$type<PlugLogFigures>().notNull(),
    /** Days that the logged ones stand for, `YYYY-MM-DD`, the last one included; null while nobody has said. */
    standsFrom: text(),
    standsTo: text(),
    importedAtMs: integer().notNull(),
    importedBy: text().notNull(),
    reviewedAtMs: integer(),
    reviewedBy: text(),
    /** When the raw readings were deleted; null while they are kept. */
    rawDeletedAtMs: integer(),
  },
  (t) => [
    uniqueIndex("plug_log_once").on(t.deviceId, t.sha256),
    index("plug_log_raw").on(t.rawDeletedAtMs, t.importedAtMs),
    check("plug_log_span", sql`${t.fromMs} < ${t.toMs}`),
    check("plug_log_energy", sql`${t.energyKwh} >= 0`),
  ],
);

/** What a building has settled about work in the field. */
export const fieldSetting = sqliteTable(
  "field_setting",
  {
    buildingId: integer()
      .primaryKey()
      .references(() => building.id, { onDelete: "cascade" }),
    /** Days for which a plug logger's raw readings are kept for review. */
    plugLogRawDays: integer().notNull(),
  },
  (t) => [check("field_setting_days", sql`${t.plugLogRawDays} between 0 and 365`)],
);
