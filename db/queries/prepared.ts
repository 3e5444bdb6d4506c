import { placeholder, type SQL } from "drizzle-orm";
import type { SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Queryable } from "../client";

/**
 * Makes a statement once for each connection, whether it is asked for within a transaction or outside: putting its SQL
 * together and preparing it takes several times as long as running it.
 */
export function preparedOnce<Statement>(make: (db: Queryable) => Statement): (db: Queryable) => Statement {
  const made = new WeakMap<object, Statement>();
  return (db) => {
    // A transaction runs over the session of its database.
    const { session } = db as unknown as { session: object };
    let statement = made.get(session);
    if (statement === undefined) {
      statement = make(db);
      made.set(session, statement);
    }
    return statement;
  };
}

type Row = Record<string, unknown>;

/**
 * Statements of one table that differ by the columns of a row and by which of them are null, each made once for each
 * connection. `make` is given the row with placeholders; null stands for itself, for a column would write it as it writes a
 * value.
 */
function preparedByColumns<Statement>(make: (db: Queryable, row: Row) => Statement) {
  const ofConnection = preparedOnce(() => new Map<string, Statement>());
  return (db: Queryable, row: Row): Statement => {
    const given = Object.entries(row).filter(([, value]) => value !== undefined);
    const statements = ofConnection(db);
    const key = given.map(([column, value]) => (value === null ? `${column}=null` : column)).join();
    let statement = statements.get(key);
    if (statement === undefined) {
      const shape = given.map(([column, value]) => [column, value === null ? null : placeholder(column)]);
      statement = make(db, Object.fromEntries(shape));
      statements.set(key, statement);
    }
    return statement;
  };
}

/** Insertion of one row: a column that is not there takes its default. */
export function preparedInsert<Table extends SQLiteTable>(table: Table) {
  const statementFor = preparedByColumns((db, row) =>
    db
      .insert(table)
      .values(row as Table["$inferInsert"])
      .returning()
      .prepare(),
  );
  return (db: Queryable, row: Table["$inferInsert"]): Table["$inferSelect"] =>
    statementFor(db, row).get(row) as Table["$inferSelect"];
}

/**
 * Update of rows that answer to `where`, whose placeholders are given as `of`; returns how many they were. A column that is
 * not there stays as it is.
 */
export function preparedUpdate<Table extends SQLiteTable>(table: Table, where: SQL) {
  const statementFor = preparedByColumns((db, row) =>
    db
      .update(table)
      .set(row as Table["$inferInsert"])
      .where(where)
      .prepare(),
  );
  return (db: Queryable, row: Partial<Table["$inferInsert"]>, of: Row): number =>
    statementFor(db, row).run({ ...row, ...of }).changes;
}
