import { createReadStream, rmSync, statSync } from "node:fs";
import { createInterface } from "node:readline";
import Database from "better-sqlite3";
import { zoneTable } from "@/lib/time/zone-table";
import { TIME_ZONE } from "../data/office-trends";
import { contend, timed } from "./contend";

/**
 * A trend file as one row a reading in a table clustered by point and time: prepared inserts, one transaction, rows in
 * the order of the file. The plainest parsing there is; the repeated hour is taken as its first pass.
 */
await contend<{ file: string; database: string; layout: "wide" | "long" }>(async ({ file, database, layout }) => {
  rmSync(database, { force: true });
  let readings = 0;
  const ms = await timed(async () => {
    const db = new Database(database);
    db.pragma("journal_mode = WAL");
    db.pragma("synchronous = NORMAL");
    db.exec("create table sample (point integer, ts integer, v real, primary key (point, ts)) without rowid");
    const insert = db.prepare("insert or replace into sample values (?, ?, ?)");
    const clock = zoneTable(TIME_ZONE);
    const points = new Map<string, number>();
    db.exec("begin");
    let first = true;
    for await (const line of createInterface({ input: createReadStream(file), crlfDelay: Number.POSITIVE_INFINITY })) {
      if (first) {
        first = false;
        continue;
      }
      const cells = line.split(",");
      const ts = utcOf(cells[0] as string);
      if (layout === "wide") {
        for (let i = 1; i < cells.length; i++)
          if (cells[i] !== "") readings += insert.run(i, ts, Number(cells[i])).changes;
      } else {
        const name = cells[1] as string;
        const known = points.get(name) ?? points.size + 1;
        points.set(name, known);
        readings += insert.run(known, ts, Number(cells[2])).changes;
      }
    }
    db.exec("commit");
    db.close();

    function utcOf(stamp: string): number {
      const local = Date.parse(`${stamp.replace(" ", "T")}Z`) / 1000;
      const instant = clock.utcFromLocal(local);
      if (instant.status === "unique") return instant.utcSeconds;
      return instant.status === "repeated" ? instant.firstUtcSeconds : instant.shiftedUtcSeconds;
    }
  });
  return { ms, readings, bytes: statSync(database).size };
});
