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

/** Statements of one table that differ by the columns they speak of, each made once for each connection. */
function preparedByColumns<Statement>(make: (db: Queryable, columns: readonly string[]) => Statement) {
  const ofConnection = preparedOnce(() => new Map<string, Statement>());
  return (db: Queryable, columns: readonly string[]): Statement => {
    const statements = ofConnection(db);
    const key = columns.join();
    let statement = statements.get(key);
    if (statement === undefined) {
      statement = make(db, columns);
      statements.set(key, statement);
    }
    return statement;
  };
}

const isGiven = (value: unknown): boolean => value !== null && value !== undefined;

/** Insertion of one row: a column without a value takes its default, or null. */
export function preparedInsert<Table extends SQLiteTable>(table: Table) {
  const statementFor = preparedByColumns((db, columns) => {
    const values = Object.fromEntries(columns.map((column) => [column, placeholder(column)]));
    return db
      .insert(table)
      .values(values as Table["$inferInsert"])
      .returning()
      .prepare();
  });
  return (db: Queryable, row: Table["$inferInsert"]): Table["$inferSelect"] => {
    const columns = Object.keys(row).filter((column) => isGiven(row[column as keyof typeof row]));
    return statementFor(db, columns).get(row) as Table["$inferSelect"];
  };
}

/**
 * Update of rows that answer to `where`, whose placeholders are given as `of`; returns how many they were. A column that is
 * not there stays as it is.
 */
export function preparedUpdate<Table extends SQLiteTable>(table: Table, where: SQL) {
  // Null stands in the statement: a column would write it as it writes a value.
  const statementFor = preparedByColumns((db, columns) => {
    const set = columns.map((column) =>
      column.endsWith(NULL) ? [column.slice(0, -1), null] : [column, placeholder(column)],
    );
    return db.update(table).set(Object.fromEntries(set)).where(where).prepare();
  });
  return (db: Queryable, row: Partial<Table["$inferInsert"]>, of: Record<string, unknown>): number => {
    const columns = Object.entries(row).flatMap(([column, value]) =>
      value === undefined ? [] : value === null ? column + NULL : column,
    );
    return statementFor(db, columns).run({ ...row, ...of }).changes;
  };
}

/** Behind the name of a column that is set to null. */
const NULL = "=";
