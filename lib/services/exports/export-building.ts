import { listElectricityBills } from "@/db/queries/electricity-bills";
import { listDesks, listZones } from "@/db/queries/zones";
import { dayNumberFromLocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { requireFacilities } from "../authorise";
import { type Building, readBuilding } from "../buildings/find";
import type { Context } from "../context";
import { readDevices } from "../devices/read";
import { readCostOfOvercooling } from "../overcooling/assess";
import { assumptionsFile } from "./assumptions-file";
import { costFiles } from "./cost-files";
import { csvText } from "./csv";
import { deviceFiles } from "./device-files";
import { registerCsvFiles } from "./register-files";
import { reportCountsFile } from "./report-counts-file";
import { reportsFile } from "./reports-file";

export type ExportedFile = { fileName: string; text: string };

/**
 * Everything that is on record of a building and what is worked out from it, as files: CSV tables and one JSON file. SI
 * units in the column names, exact figures; trends stay in the files they came in.
 */
export async function exportBuilding(ctx: Context, buildingId: number): Promise<ExportedFile[]> {
  requireFacilities(ctx);
  const building = readBuilding(ctx, buildingId);
  const cost = await readCostOfOvercooling(ctx, buildingId);
  const files = [
    buildingFile(building),
    zonesFile(ctx, buildingId),
    desksFile(ctx, buildingId),
    ...deviceFiles(readDevices(ctx, buildingId), building.currency),
    ...registerCsvFiles(ctx, buildingId),
    billsFile(ctx, buildingId, building.currency),
    reportsFile(ctx, buildingId),
    reportCountsFile(ctx, buildingId),
    assumptionsFile(ctx, buildingId),
    ...costFiles(cost.assessment, building.currency),
  ];
  const whole = { building, exportedAtMs: ctx.now, cost };
  return [...files, { fileName: "building.json", text: `${JSON.stringify(whole, null, 2)}\n` }];
}

function buildingFile({ occupiedHours: _, ...building }: Building): ExportedFile {
  const entries = Object.entries(building);
  return { fileName: "building.csv", text: csvText(["field", "value"], entries) };
}

function zonesFile(ctx: Context, buildingId: number): ExportedFile {
  const columns = [
    "zone",
    "name",
    "floor",
    "area (m2)",
    "air handler",
    "design airflow (m3/s)",
    "minimum airflow (m3/s)",
  ];
  const rows = listZones(ctx.db, buildingId).map((zone) => [
    zone.code,
    zone.name,
    zone.floor,
    zone.floorAreaM2,
    zone.airHandler,
    zone.designAirflowM3ps,
    zone.minimumAirflowM3ps,
  ]);
  return { fileName: "zones.csv", text: csvText(columns, rows) };
}

function desksFile(ctx: Context, buildingId: number): ExportedFile {
  const codes = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  const rows = listDesks(ctx.db, buildingId).map((desk) => [desk.code, codes.get(desk.zoneId) ?? "", desk.note]);
  return { fileName: "desks.csv", text: csvText(["desk", "zone", "note"], rows) };
}

/** Bills in the columns of the table that can be brought in; `to` is the last day of each. */
function billsFile(ctx: Context, buildingId: number, currency: string): ExportedFile {
  const rows = listElectricityBills(ctx.db, buildingId).map((bill) => {
    const last = localDateFromDayNumber((dayNumberFromLocalDate(bill.untilDate) ?? 0) - 1);
    return [bill.fromDate, last, bill.energyKwh, bill.billedDemandKw, bill.charges, currency];
  });
  const columns = ["from", "to", "energy (kWh)", "billed demand (kW)", "charges", "currency"];
  return { fileName: "bills.csv", text: csvText(columns, rows) };
}
