import { eq, getTableColumns, inArray, type SQL, sql } from "drizzle-orm";
import type { SQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Queryable } from "../client";
import { assumptionOverride } from "../schema/assumption-override";
import { building, holiday, occupiedInterval } from "../schema/building";
import { comfortReport } from "../schema/comfort";
import { device, deviceSetting } from "../schema/device";
import { importRun, point } from "../schema/trend-import";
import { weatherYear } from "../schema/weather";
import { desk, zone } from "../schema/zone";

/** Everything of a building that its results rest on, as text by subject: what was changed reads differently. */
export type InputMarks = {
  building: string;
  zones: string;
  devices: string;
  assumptions: string;
  reports: string;
  weather: string;
  mapping: string;
  imports: string;
  /** Ids of the building's points. */
  pointIds: number[];
};

/** Columns that no result depends on. */
const OF_NO_CONSEQUENCE = new Set(["createdAtMs", "updatedAtMs", "fileUnit"]);

/**
 * Written out by the database itself: pages ask for them at every visit, so no row is unpacked here. Reports are only ever
 * added; of an assumption's values the newest is in force until it is ended.
 */
export function readInputMarks(db: Queryable, buildingId: number): InputMarks {
  const own = (table: SQLiteTable & { buildingId: SQLiteColumn }): SQL => sql`${eq(table.buildingId, buildingId)}`;
  const settings = inArray(
    deviceSetting.deviceId,
    sql`(select ${device.id} from ${device} where ${eq(device.buildingId, buildingId)})`,
  );
  const settled = inArray(importRun.state, ["done", "refused", "undone"]);
  const row = db.get<Record<keyof InputMarks, string>>(sql`select
    ${rows(building, eq(building.id, buildingId))}
      || ${rows(occupiedInterval, own(occupiedInterval))} || ${rows(holiday, own(holiday))} as "building",
    ${rows(zone, own(zone))} || ${rows(desk, own(desk))} as "zones",
    ${rows(device, own(device))} || ${rows(deviceSetting, settings)} as "devices",
    (select json_array(count(*), max(${assumptionOverride.id}), max(${assumptionOverride.endedAtMs}))
      from ${assumptionOverride} where ${own(assumptionOverride)}) as "assumptions",
    (select json_array(count(*), max(${comfortReport.id})) from ${comfortReport} where ${own(comfortReport)})
      as "reports",
    (select json_group_array(json_array(${weatherYear.id}, ${weatherYear.sha256})) from ${weatherYear}
      where ${own(weatherYear)}) as "weather",
    ${rows(point, own(point))} as "mapping",
    (select json_array(count(*), max(${importRun.id}), max(${importRun.finishedAtMs}), total(${importRun.state} = 'done'))
      from ${importRun} where ${own(importRun)} and ${settled}) as "imports",
    (select json_group_array(${point.id}) from ${point} where ${own(point)}) as "pointIds"`);
  return { ...row, pointIds: JSON.parse(row.pointIds) as number[] };
}

/** All rows of a table that answer to `where`, as JSON. A column added later is in it by itself. */
function rows(table: SQLiteTable, where: SQL): SQL {
  const columns = Object.entries(getTableColumns(table)).filter(([name]) => !OF_NO_CONSEQUENCE.has(name));
  const values = sql.join(
    columns.map(([, column]) => sql`${column}`),
    sql`, `,
  );
  return sql`(select json_group_array(json_array(${values}) order by ${table}.rowid) from ${table} where ${where})`;
}
