import { index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { POINT_KINDS } from "@/lib/trends/point-kind";
import { building } from "./building";
import { zone } from "./zone";

/** A trend point of the control system. Its id is the series id of the trend store. */
export const point = sqliteTable(
  "point",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    externalName: text().notNull(),
    kind: text({ enum: POINT_KINDS }).notNull(),
    zoneId: integer().references(() => zone.id),
    /** Unit of the file as confirmed at mapping (`degF`, `cfm`...); the store holds SI. */
    fileUnit: text().notNull(),
    /** `interval` samples stand for a step, `change-of-value` samples hold until the next. */
    sampling: text({ enum: ["interval", "change-of-value"] }).notNull(),
  },
  (t) => [uniqueIndex("point_name").on(t.buildingId, t.externalName), index("point_zone").on(t.zoneId)],
);

/** `readings` are what a collector sends one by one: no file. */
export const IMPORT_KINDS = ["trends", "weather", "zones", "desks", "devices", "bills", "readings"] as const;
export type ImportKind = (typeof IMPORT_KINDS)[number];

/**
 * Life of an import: received (its bytes are kept) -> inspecting -> waiting (for its mapping) -> queued -> running -> done.
 * Runs that are received or queued are the queue: nothing else holds it.
 */
export const IMPORT_STATES = [
  "received",
  "inspecting",
  "waiting",
  "queued",
  "running",
  "done",
  "interrupted",
  "refused",
  "failed",
  "cancelled",
  "undone",
] as const;
export type ImportState = (typeof IMPORT_STATES)[number];

/** One file taken in: what it was, what became of its rows, and the findings about it. */
export const importRun = sqliteTable(
  "import_run",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    kind: text({ enum: IMPORT_KINDS }).notNull(),
    fileName: text().notNull(),
    sha256: text("sha256").notNull(),
    byteCount: integer().notNull(),
    state: text({ enum: IMPORT_STATES }).notNull(),
    /** Sentence for the reader: refusal, failure or summary. */
    message: text().notNull().default(""),
    /** Row fates: accepted + repaired + held back + rejected + ignored = rows in file. */
    rowsInFile: integer().notNull().default(0),
    rowsAccepted: integer().notNull().default(0),
    rowsRepaired: integer().notNull().default(0),
    rowsHeldBack: integer().notNull().default(0),
    rowsRejected: integer().notNull().default(0),
    rowsIgnored: integer().notNull().default(0),
    samplesAdded: integer().notNull().default(0),
    samplesChanged: integer().notNull().default(0),
    samplesSame: integer().notNull().default(0),
    /** Inspection as JSON (see lib/importers/trend-csv): points, findings, questions. */
    inspection: text({ mode: "json" }).$type<unknown>(),
    /** Answers and mapping as given, JSON. */
    answers: text({ mode: "json" }).$type<unknown>(),
    startedAtMs: integer().notNull(),
    finishedAtMs: integer(),
    startedBy: text().notNull(),
    /** Taken in although the same file was imported before: for points that were left out then. */
    again: integer({ mode: "boolean" }).notNull().default(false),
    /** Who works on it (host, process, thread) and the last sign of life from there; null when nobody does. */
    owner: text(),
    heartbeatAtMs: integer(),
    /** Times that someone has begun to work on it since it last got a step further. */
    attempts: integer().notNull().default(0),
    /** Who asked for it to be cancelled or, when it is done, undone. */
    withdrawalAskedBy: text(),
    /** How far the present stage (inspecting or running) is, and when it began. */
    stageStartedAtMs: integer(),
    bytesToRead: integer().notNull().default(0),
    bytesRead: integer().notNull().default(0),
    rowsRead: integer().notNull().default(0),
    readingsRead: integer().notNull().default(0),
    /** Findings so far: how many by code, JSON. */
    findingsSoFar: text({ mode: "json" }).$type<Record<string, number>>(),
  },
  (t) => [
    index("import_run_building").on(t.buildingId, t.startedAtMs),
    index("import_run_sha").on(t.buildingId, t.sha256),
    index("import_run_queue").on(t.state, t.id),
  ],
);

/** Rows that were not plainly accepted, by physical line (the first hundred of each code are kept whole). */
export const importRow = sqliteTable(
  "import_row",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    runId: integer()
      .notNull()
      .references(() => importRun.id, { onDelete: "cascade" }),
    line: integer().notNull(),
    fate: text({ enum: ["repaired", "held-back", "rejected", "ignored"] }).notNull(),
    code: text().notNull(),
    excerpt: text().notNull().default(""),
  },
  (t) => [index("import_row_run").on(t.runId)],
);
