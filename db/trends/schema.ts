import type Database from "better-sqlite3";

/** Marks the file as a trend store: "STLT" in ASCII. */
const APPLICATION_ID = 0x53544c54;

/** Steps from one `user_version` to the next. Only ever added to. */
const MIGRATIONS = [
  `
  create table series (
    id integer primary key,            -- = point.id in app.db
    decimals integer not null,         -- the most that any of its chunks keeps; last_v is scaled by it
    n integer not null,
    first_ts integer, last_ts integer, last_v integer,
    rev integer not null               -- raised by every commit that changes the series; never goes back
  );
  create table chunk (
    id integer primary key,            -- series * 4096 + bucket of 28 days (bucket.ts)
    n integer not null,
    t0 integer not null, t1 integer not null,                              -- first and last second
    vmin integer not null, vmax integer not null, vsum integer not null,   -- scaled as the chunk's own header says
    data blob not null                 -- chunk-format.ts
  );
  create table chunk_undo (            -- rowid gives the order of writing
    run integer not null,
    chunk_id integer not null,
    before blob,                       -- null: there was no chunk
    unique (run, chunk_id)
  );
  create index chunk_undo_chunk on chunk_undo (chunk_id);
  create table run_log (
    run integer primary key,
    undoable integer not null          -- 0 once the run's rows of chunk_undo were given up
  );
  `,
];

/** Opens the tables, making or bringing them up to date first. */
export function prepareSchema(db: Database.Database, file: string): void {
  db.pragma("page_size = 8192");
  db.pragma("journal_mode = WAL");
  db.pragma("synchronous = NORMAL");
  db.pragma("cache_size = -16384");
  db.pragma("busy_timeout = 5000");

  const version = userVersion(db);
  if (version > MIGRATIONS.length) {
    throw new Error(`${file} was written by a newer version of the program: update the program to open it`);
  }
  const tables = db.prepare("select count(*) from sqlite_schema").pluck().get() as number;
  if (tables > 0 && db.pragma("application_id", { simple: true }) !== APPLICATION_ID) {
    throw new Error(`${file} is a database, but not a trend store: give another file name`);
  }
  if (version < MIGRATIONS.length) db.transaction(migrate).immediate(db);
}

function migrate(db: Database.Database): void {
  for (const step of MIGRATIONS.slice(userVersion(db))) db.exec(step);
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.pragma(`user_version = ${MIGRATIONS.length}`);
}

function userVersion(db: Database.Database): number {
  return db.pragma("user_version", { simple: true }) as number;
}
