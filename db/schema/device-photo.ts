import { index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { building } from "./building";
import { device } from "./device";
import { inspectionItem } from "./device-life";

/** A photo of a device, of its label or of an inspection's finding. The picture is a file of the uploads folder. */
export const devicePhoto = sqliteTable(
  "device_photo",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    deviceId: integer()
      .notNull()
      .references(() => device.id, { onDelete: "cascade" }),
    /** The finding that it shows; null for a photo of the device. */
    inspectionItemId: integer().references(() => inspectionItem.id, { onDelete: "cascade" }),
    /** Of the re-encoded picture, without the metadata of the camera. */
    sha256: text("sha256").notNull(),
    byteCount: integer().notNull(),
    widthPx: integer().notNull(),
    heightPx: integer().notNull(),
    caption: text().notNull().default(""),
    enteredAtMs: integer().notNull(),
    enteredBy: text().notNull(),
  },
  (t) => [index("device_photo_device").on(t.deviceId)],
);
