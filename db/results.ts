import { mkdirSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";

/** What a result is of and what it rested on. */
export type ResultStamp = {
  buildingId: number;
  /** What was worked out, e.g. `zone-analysis/12`. */
  subject: string;
  /** Hashes of what it rests on: of its own making, compared as text. */
  restsOn: string;
  /** Epoch milliseconds. */
  workedOutAtMs: number;
};

export type KeptResult = ResultStamp & { result: unknown };

/**
 * Results of analyses, kept so that the last one can be shown while the next is worked out. One row a building and
 * subject. All of it can be worked out again: the file may be deleted whenever no program has it open.
 */
export type ResultStore = {
  find(buildingId: number, subject: string): KeptResult | null;
  /** The same without the result: cheap however large that is. */
  stamp(buildingId: number, subject: string): ResultStamp | null;
  /** All whose subject begins with `prefix`. */
  list(buildingId: number, prefix: string): KeptResult[];
  save(result: KeptResult): void;
  close(): void;
};

/** Raised when the tables change: a file of another form is emptied and filled anew. */
const FORM = 1;

type Row = { subject: string; rests_on: string; worked_out_at_ms: number };

/**
 * Opens `results.db` (or `:memory:`). It is a file of its own so that a result of megabytes never holds up those who write
 * reports and devices into `app.db`, and so that a backup need not hold it.
 */
export function openResultStore(file: string): ResultStore {
  if (file !== ":memory:") mkdirSync(path.dirname(file), { recursive: true });
  const db = new Database(file);
  db.pragma("journal_mode = WAL");
  db.pragma("synchronous = NORMAL");
  db.pragma("busy_timeout = 5000");
  prepareTable(db);
  const columns = "subject, rests_on, worked_out_at_ms";
  const select = db.prepare<[number, string], Row & { result: string }>(
    `select ${columns}, result from result where building_id = ? and subject = ?`,
  );
  const selectStamp = db.prepare<[number, string], Row>(
    `select ${columns} from result where building_id = ? and subject = ?`,
  );
  const selectPrefix = db.prepare<[number, string, string], Row & { result: string }>(
    `select ${columns}, result from result where building_id = ? and subject >= ? and subject < ?`,
  );
  const replace = db.prepare("replace into result values (?, ?, ?, ?, ?)");

  const stampOf = (buildingId: number, row: Row): ResultStamp => ({
    buildingId,
    subject: row.subject,
    restsOn: row.rests_on,
    workedOutAtMs: row.worked_out_at_ms,
  });
  const whole = (buildingId: number, row: Row & { result: string }): KeptResult => ({
    ...stampOf(buildingId, row),
    result: JSON.parse(row.result),
  });
  return {
    find(buildingId, subject) {
      const row = select.get(buildingId, subject);
      return row ? whole(buildingId, row) : null;
    },
    stamp(buildingId, subject) {
      const row = selectStamp.get(buildingId, subject);
      return row ? stampOf(buildingId, row) : null;
    },
    list: (buildingId, prefix) =>
      selectPrefix.all(buildingId, prefix, `${prefix}\u{10ffff}`).map((row) => whole(buildingId, row)),
    save({ buildingId, subject, restsOn, workedOutAtMs, result }) {
      replace.run(buildingId, subject, restsOn, workedOutAtMs, JSON.stringify(result));
    },
    close: () => void db.close(),
  };
}

function prepareTable(db: Database.Database): void {
  db.transaction(() => {
    if (db.pragma("user_version", { simple: true }) !== FORM) db.exec("drop table if exists result");
    // The result stands last, so that a stamp is read without it.
    db.exec(`create table if not exists result (
      building_id integer not null,
      subject text not null,
      rests_on text not null,
      worked_out_at_ms integer not null,
      result text not null,
      primary key (building_id, subject)
    )`);
    db.pragma(`user_version = ${FORM}`);
  }).immediate();
}
