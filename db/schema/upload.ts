import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { building } from "./building";
import { IMPORT_KINDS, importRun } from "./trend-import";

export const UPLOAD_STATES = ["receiving", "complete", "abandoned", "expired"] as const;
export type UploadState = (typeof UPLOAD_STATES)[number];

/**
 * A file that comes in parts. Its bytes lie in a passing file until it is whole; how many there are is the length of
 * that file, and `receivedBytes` is what it was when the row was last written.
 */
export const upload = sqliteTable(
  "upload",
  {
    /** 32 random bytes as text: part of the address that the parts are sent to. */
    id: text().primaryKey(),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    fileName: text().notNull(),
    kind: text({ enum: IMPORT_KINDS }).notNull(),
    totalBytes: integer().notNull(),
    receivedBytes: integer().notNull().default(0),
    /** When the file was last changed where it comes from; tells it from another of the same name and size. */
    lastModifiedMs: integer(),
    /** SHA-256 of the whole as said by the sender, in hexadecimal. */
    declaredSha256: text("declared_sha256"),
    /** SHA-256 of the whole as received. */
    sha256: text("sha256"),
    state: text({ enum: UPLOAD_STATES }).notNull(),
    /** Import that the whole file became. */
    runId: integer().references(() => importRun.id, { onDelete: "set null" }),
    startedAtMs: integer().notNull(),
    startedBy: text().notNull(),
    lastPartAtMs: integer().notNull(),
  },
  (t) => [
    index("upload_building").on(t.buildingId, t.state),
    check("upload_bytes", sql`${t.totalBytes} > 0 and ${t.receivedBytes} between 0 and ${t.totalBytes}`),
  ],
);
