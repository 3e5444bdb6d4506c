import { existsSync } from "node:fs";
import { DuckDBInstance } from "@duckdb/node-api";
import { reportMoments } from "../data/degree-hours";
import { medianMs } from "../stopwatch";
import { contend } from "./contend";
import type { ReadInput } from "./read-product";

const AIR = "select zone, ts, v from reading where kind = 1";
const SETPOINT = "select zone, ts, v from reading where kind = 3";
const degreeHours = (where: string) =>
  `select sum(greatest(s.v - a.v, 0)) / 1000 * 0.25 from (${AIR}${where}) a asof join (${SETPOINT}${where}) s
   on a.zone = s.zone and a.ts >= s.ts`;

/** The same questions in SQL to a table of one row a reading, sorted by kind, zone and time. */
await contend<ReadInput>(async ({ database, csv, zones, firstTs }) => {
  const fresh = !existsSync(database);
  const instance = await DuckDBInstance.create(database);
  const connection = await instance.connect();
  if (fresh) {
    await connection.run(
      `create table reading as select * from read_csv('${csv}', header = false,
       columns = {'zone': 'integer', 'kind': 'integer', 'ts': 'integer', 'v': 'integer'}) order by kind, zone, ts`,
    );
    const moments = reportMoments(zones, firstTs).map(({ zone, ts }) => `(${zone}, ${ts})`);
    await connection.run(`create table report as select * from (values ${moments.join()}) report(zone, ts)`);
    await connection.run("checkpoint");
  }
  const answers = { zone: 0, all: 0, asOf: 0, latest: 0 };
  const ask = (answer: keyof typeof answers, sql: string) => async () => {
    answers[answer] = Number((await connection.runAndReadAll(sql)).getRows()[0]?.[0]);
  };
  const zoneMs = await medianMs(20, ask("zone", degreeHours(" and zone = 0")));
  const allMs = await medianMs(3, ask("all", degreeHours("")));
  const asOfMs = await medianMs(
    3,
    ask(
      "asOf",
      `select (sum(a.v) + sum(s.v)) / 1000 from report r asof join (${AIR}) a on r.zone = a.zone and r.ts >= a.ts
       asof join (${SETPOINT}) s on r.zone = s.zone and r.ts >= s.ts`,
    ),
  );
  const latestMs = await medianMs(
    5,
    ask(
      "latest",
      `select sum(v / case when kind = 2 then 100000 else 1000 end) from
       (select kind, arg_max(v, ts) v from reading group by zone, kind)`,
    ),
  );
  connection.closeSync();
  instance.closeSync();
  return { ms: zoneMs + allMs + asOfMs + latestMs, zoneMs, allMs, asOfMs, latestMs, answers };
});
