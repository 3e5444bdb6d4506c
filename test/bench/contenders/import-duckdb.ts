import { rmSync, statSync } from "node:fs";
import { DuckDBInstance } from "@duckdb/node-api";
import { contend, timed } from "./contend";

/**
 * A trend file by `read_csv` into a table of a database file: types are found, nothing is checked or joined up. It takes
 * all cores unless `threads` says how many.
 */
await contend<{ file: string; database: string; threads?: number }>(async ({ file, database, threads }) => {
  rmSync(database, { force: true });
  let readings = 0;
  const ms = await timed(async () => {
    const instance = await DuckDBInstance.create(database, threads ? { threads: String(threads) } : {});
    const connection = await instance.connect();
    await connection.run(`create table trend as select * from read_csv('${file}')`);
    await connection.run("checkpoint");
    const rows = await connection.runAndReadAll("select count(*)::integer n from trend");
    readings = Number(rows.getRowObjects()[0]?.n);
    connection.closeSync();
    instance.closeSync();
  });
  return { ms, rows: readings, bytes: statSync(database).size };
});
