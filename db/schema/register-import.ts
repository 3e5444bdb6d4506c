import { index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import type { RegisterMapping } from "@/lib/importers/register/register-mapping";
import { building } from "./building";
import { importRun } from "./trend-import";

/** A spreadsheet register on its way in: its file is kept, its columns are mapped by a person, then it is taken. */
export const registerImport = sqliteTable(
  "register_import",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    fileName: text().notNull(),
    sha256: text("sha256").notNull(),
    byteCount: integer().notNull(),
    /** Which column is what, and what stands in for what the file does not say, JSON; null before it is mapped. */
    mapping: text({ mode: "json" }).$type<RegisterMapping>(),
    /** The import that came of it, with the fate of every row; null while it waits. */
    importRunId: integer().references(() => importRun.id, { onDelete: "set null" }),
    receivedAtMs: integer().notNull(),
    receivedBy: text().notNull(),
  },
  (t) => [index("register_import_building").on(t.buildingId, t.receivedAtMs)],
);
