import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import * as access from "./schema/access";
import * as assumptionOverride from "./schema/assumption-override";
import * as branchCircuit from "./schema/branch-circuit";
import * as building from "./schema/building";
import * as collector from "./schema/collector";
import * as comfort from "./schema/comfort";
import * as device from "./schema/device";
import * as deviceLife from "./schema/device-life";
import * as devicePhoto from "./schema/device-photo";
import * as electricityBill from "./schema/electricity-bill";
import * as mappingProfile from "./schema/mapping-profile";
import * as plugLog from "./schema/plug-log";
import * as proposal from "./schema/proposal";
import * as registerImport from "./schema/register-import";
import * as reportMail from "./schema/report-mail";
import * as setpointChange from "./schema/setpoint-change";
import * as tariff from "./schema/tariff";
import * as trendImport from "./schema/trend-import";
import * as upload from "./schema/upload";
import * as verdictNote from "./schema/verdict-note";
import * as verification from "./schema/verification";
import * as walk from "./schema/walk";
import * as weather from "./schema/weather";
import * as zone from "./schema/zone";

const schema = {
  ...access,
  ...assumptionOverride,
  ...branchCircuit,
  ...building,
  ...collector,
  ...comfort,
  ...reportMail,
  ...device,
  ...deviceLife,
  ...devicePhoto,
  ...electricityBill,
  ...mappingProfile,
  ...plugLog,
  ...proposal,
  ...registerImport,
  ...setpointChange,
  ...tariff,
  ...trendImport,
  ...upload,
  ...verdictNote,
  ...verification,
  ...walk,
  ...weather,
  ...zone,
};

export type AppDatabase = BetterSQLite3Database<typeof schema> & { $client: Database.Database };

/** The database inside a transaction. Queries take either: both are synchronous. */
export type AppTransaction = Parameters<Parameters<AppDatabase["transaction"]>[0]>[0];
export type Queryable = AppDatabase | AppTransaction;

/**
 * Opens `app.db` (or `:memory:`), sets its pragmas and brings it to the newest migration. Makes the folder when it
 * is missing. Call it on first use, never while a module loads: a build imports every module. Every `checkpointPages` pages
 * of the write-ahead log the connection that writes moves them into the database, which waits for the disk.
 */
export function openAppDatabase(file: string, { checkpointPages = 1000 } = {}): AppDatabase {
  if (file !== ":memory:") mkdirSync(path.dirname(file), { recursive: true });
  const client = new Database(file);
  client.pragma("journal_mode = WAL");
  client.pragma("synchronous = NORMAL");
  client.pragma("foreign_keys = ON");
  client.pragma("busy_timeout = 5000");
  client.pragma(`wal_autocheckpoint = ${checkpointPages}`);
  const db = drizzle(client, { schema, casing: "snake_case" }) as AppDatabase;
  migrate(db, { migrationsFolder: migrationsFolder() });
  return db;
}

function migrationsFolder(): string {
  const folder = path.join(/* turbopackIgnore: true */ process.cwd(), "db", "migrations");
  if (existsSync(folder)) return folder;
  throw new Error(`no migrations at ${folder}: start the program from the project's folder`);
}

type NotAPromise<T> = T extends PromiseLike<unknown> ? never : T;

/**
 * Runs `work` in one immediate transaction: all of it or nothing. The driver is synchronous, so a callback that
 * returns a Promise would commit before it has finished; the type refuses it, and so does the run.
 */
export function inTransaction<T>(db: AppDatabase, work: (tx: AppTransaction) => NotAPromise<T>): T {
  return db.transaction(
    (tx) => {
      const result = work(tx) as T;
      if (result instanceof Promise) throw new TypeError("a transaction's callback must not return a Promise");
      return result;
    },
    { behavior: "immediate" },
  );
}
