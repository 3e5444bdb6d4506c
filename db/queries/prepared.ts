import { sql } from "drizzle-orm";
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

/**
 * Insertion of one row, prepared once for each set of columns that have a value: a column without one takes its default,
 * or null.
 */
export function preparedInsert<Table extends SQLiteTable>(table: Table) {
  const byColumns = preparedOnce(() => new Map<string, ReturnType<typeof prepare>>());
  const prepare = (db: Queryable, columns: readonly string[]) => {
    const values = Object.fromEntries(columns.map((column) => [column, sql.placeholder(column)]));
    return db
      .insert(table)
      .values(values as Table["$inferInsert"])
      .returning()
      .prepare();
  };
  return (db: Queryable, row: Table["$inferInsert"]): Table["$inferSelect"] => {
    const given = Object.entries(row).filter(([, value]) => value !== null && value !== undefined);
    const columns = given.map(([column]) => column).sort();
    const statements = byColumns(db);
    const key = columns.join(" ");
    let statement = statements.get(key);
    if (statement === undefined) {
      statement = prepare(db, columns);
      statements.set(key, statement);
    }
    return statement.get(Object.fromEntries(given)) as Table["$inferSelect"];
  };
}
