import { getTableColumns, inArray, type SQL, sql } from "drizzle-orm";
import type { SQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Queryable } from "../client";
import { assumptionOverride } from "../schema/assumption-override";
import { building, holiday, occupiedInterval } from "../schema/building";
import { comfortReport } from "../schema/comfort";
import { device, deviceSetting } from "../schema/device";
import { electricityBill } from "../schema/electricity-bill";
import { proposal, proposalEvent } from "../schema/proposal";
import { setpointChange } from "../schema/setpoint-change";
import { tariff } from "../schema/tariff";
import { importRun, point } from "../schema/trend-import";
import { verificationResult } from "../schema/verification";
import { weatherYear } from "../schema/weather";
import { desk, zone } from "../schema/zone";
import { preparedOnce } from "./prepared";

/** Everything of a building that its results rest on, as text by subject: what was changed reads differently. */
export type InputMarks = {
  building: string;
  zones: string;
  devices: string;
  assumptions: string;
  reports: string;
  weather: string;
  bills: string;
  proposals: string;
  mapping: string;
  imports: string;
  /** Ids of the building's points. */
  pointIds: number[];
};

/** Columns that no result depends on. A device's status shows in the day on which it was removed. */
const OF_NO_CONSEQUENCE = new Set([
  "createdAtMs",
  "updatedAtMs",
  "fileUnit",
  "status",
  "make",
  "model",
  "dateCode",
  "ownerContact",
  "circuitId",
  "circuitMapping",
  "outletKind",
  "outletLabel",
  "isFastened",
  "longestRunHours",
]);

/** It is long, and pages ask for it at every visit. */
const selectMarks = preparedOnce((db) => prepareMarks(db));

/**
 * Written out by the database itself, so that no row is unpacked here. Reports are only ever added; of an assumption's
 * values the newest is in force until it is ended.
 */
export function readInputMarks(db: Queryable, buildingId: number): InputMarks {
  const row = selectMarks(db).get({ buildingId });
  if (!row) throw new Error(`there is no building number ${buildingId}`);
  return { ...row, pointIds: JSON.parse(row.pointIds) as number[] };
}

function prepareMarks(db: Queryable) {
  const id = sql.placeholder("buildingId");
  const own = (table: SQLiteTable & { buildingId: SQLiteColumn }): SQL => sql`${table.buildingId} = ${id}`;
  const settings = sql`${deviceSetting.deviceId} in
    (select ${device.id} from ${device} where ${own(device)})`;
  const ofProposals = (table: SQLiteTable & { id: SQLiteColumn; proposalId: SQLiteColumn }): SQL =>
    sql`(select max(${table.id}) from ${table} where ${table.proposalId} in
      (select ${proposal.id} from ${proposal} where ${own(proposal)}))`;
  const settled = inArray(importRun.state, ["done", "refused", "undone"]);
  const newest = sql`json_array(count(*), max(${importRun.id}), max(${importRun.finishedAtMs}),
    total(${importRun.state} = 'done'))`;
  return db
    .select({
      building: sql<string>`${rows(building, sql`${building.id} = ${id}`)}
        || ${rows(occupiedInterval, own(occupiedInterval))} || ${rows(holiday, own(holiday))} || ${rows(tariff, own(tariff))}`,
      zones: sql<string>`${rows(zone, own(zone))} || ${rows(desk, own(desk))}`,
      devices: sql<string>`${rows(device, own(device))} || ${rows(deviceSetting, settings)}`,
      assumptions: sql<string>`(select json_array(max(${assumptionOverride.id}),
        count(${assumptionOverride.endedAtMs})) from ${assumptionOverride} where ${own(assumptionOverride)})`,
      reports: sql<string>`(select json_array(count(*), max(${comfortReport.id})) from ${comfortReport}
        where ${own(comfortReport)})`,
      weather: sql<string>`(select json_group_array(json_array(${weatherYear.id}, ${weatherYear.sha256}))
        from ${weatherYear} where ${own(weatherYear)})`,
      bills: rows(electricityBill, own(electricityBill)),
      proposals: sql<string>`json_array(${ofProposals(proposalEvent)}, ${ofProposals(verificationResult)},
        (select max(${setpointChange.id}) from ${setpointChange} where ${own(setpointChange)}))`,
      mapping: rows(point, own(point)),
      imports: sql<string>`(select ${newest} from ${importRun} where ${own(importRun)} and ${settled})`,
      pointIds: sql<string>`(select json_group_array(${point.id}) from ${point} where ${own(point)})`,
    })
    .from(sql`(select 1)`)
    .prepare();
}

/** All rows of a table that answer to `where`, as JSON. A column added later is in it by itself. */
function rows(table: SQLiteTable, where: SQL): SQL<string> {
  const columns = Object.entries(getTableColumns(table)).filter(([name]) => !OF_NO_CONSEQUENCE.has(name));
  const values = sql.join(
    columns.map(([, column]) => sql`${column}`),
    sql`, `,
  );
  return sql<string>`(select json_group_array(json_array(${values}) order by ${table}.rowid) from ${table} where ${where})`;
}
