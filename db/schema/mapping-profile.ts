import { sql } from "drizzle-orm";
import { check, index, integer, primaryKey, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { building } from "./building";
import { importRun } from "./trend-import";

/** How the files of one source are mapped, made by a person; what it says stands in its versions. */
export const mappingProfile = sqliteTable(
  "mapping_profile",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    name: text().notNull(),
    /** A retired profile stays on record and settles no further file. */
    retiredAtMs: integer(),
    retiredBy: text(),
  },
  (t) => [
    uniqueIndex("mapping_profile_name").on(t.buildingId, t.name).where(sql`${t.retiredAtMs} is null`),
    check("mapping_profile_named", sql`length(trim(${t.name})) > 0`),
  ],
);

/** What a profile said from one confirmation to the next. Versions are never changed. */
export const mappingProfileVersion = sqliteTable(
  "mapping_profile_version",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    profileId: integer()
      .notNull()
      .references(() => mappingProfile.id, { onDelete: "cascade" }),
    version: integer().notNull(),
    /** Shape of the file, answers and points as JSON (see lib/services/mapping-profiles/profile-content). */
    content: text({ mode: "json" }).$type<unknown>().notNull(),
    /** The newest of the files that it was made from. */
    fileName: text().notNull(),
    madeAtMs: integer().notNull(),
    madeBy: text().notNull(),
  },
  (t) => [uniqueIndex("mapping_profile_version_number").on(t.profileId, t.version)],
);

/** Which version of a profile settled a file, or was made from it. */
export const importRunProfile = sqliteTable(
  "import_run_profile",
  {
    runId: integer()
      .notNull()
      .references(() => importRun.id, { onDelete: "cascade" }),
    profileVersionId: integer()
      .notNull()
      .references(() => mappingProfileVersion.id, { onDelete: "cascade" }),
    role: text({ enum: ["settled-by", "source-of"] }).notNull(),
    /** What was said of it: that another profile fitted too. */
    remark: text().notNull().default(""),
  },
  (t) => [primaryKey({ columns: [t.runId, t.role] }), index("import_run_profile_version").on(t.profileVersionId)],
);

/** What was entered on a building's mapping page and is not confirmed yet, so that nothing typed is lost. */
export const mappingDraft = sqliteTable("mapping_draft", {
  buildingId: integer()
    .primaryKey()
    .references(() => building.id, { onDelete: "cascade" }),
  /** See lib/services/trend-imports/mapping-draft. */
  draft: text({ mode: "json" }).$type<unknown>().notNull(),
  updatedAtMs: integer().notNull(),
  updatedBy: text().notNull(),
});
