import { expect, it } from "vitest";
import { updateBuilding } from "@/db/queries/buildings";
import { type InputMarks, readInputMarks } from "@/db/queries/input-marks";
import { upsertPoint } from "@/db/queries/points";
import { overrideAssumption, withdrawOverride } from "@/lib/services/assumptions/override";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { addDesk } from "@/lib/services/desks/save";
import { registerDevice } from "@/lib/services/devices/register";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { bringWeather } from "@/test/factories/office-records";

/** Tables of a building that no result is worked out from. */
const OF_NO_CONSEQUENCE = [
  "branch_circuit",
  "collector_token",
  "comfort_link",
  "device_photo",
  "field_setting",
  "held_report",
  "mapping_draft",
  "mapping_profile",
  "plug_log",
  "register_import",
  "report_answer_mail",
  "report_mail_recipient",
  "report_mail_server",
  "report_retention",
  "report_webhook",
  "upload",
  "verdict_note",
  "walk",
];

const MARKED = [
  "assumption_override",
  "building",
  "comfort_report",
  "desk",
  "device",
  "electricity_bill",
  "holiday",
  "import_run",
  "occupied_interval",
  "point",
  "proposal",
  "setpoint_change",
  "tariff",
  "weather_year",
  "zone",
];

it("knows every table of a building: one that is added has to be marked, or said to be of no consequence", () => {
  const { ctx } = smallOffice();
  const tables = ctx.db.$client
    .prepare<[], string>(
      "select m.name from sqlite_master m join pragma_table_info(m.name) c on c.name = 'building_id'",
    )
    .pluck()
    .all();
  expect([...tables, "building"].sort()).toEqual([...MARKED, ...OF_NO_CONSEQUENCE].sort());
});

it("reads differently in what was changed, and in nothing else", () => {
  const { ctx, buildingId, zoneId } = smallOffice();
  let before = readInputMarks(ctx.db, buildingId);
  const changedBy = (change: () => unknown): string[] => {
    change();
    const after = readInputMarks(ctx.db, buildingId);
    const names = (Object.keys(after) as (keyof InputMarks)[]).filter(
      (name) => JSON.stringify(after[name]) !== JSON.stringify(before[name]),
    );
    before = after;
    return names;
  };
  const { token } = issueComfortLink(ctx, buildingId, { zoneId });
  expect(changedBy(() => updateBuilding(ctx.db, buildingId, { electricityPricePerKwh: 0.2 }))).toEqual(["building"]);
  expect(changedBy(() => updateBuilding(ctx.db, buildingId, { updatedAtMs: ctx.now + 1 }))).toEqual([]);
  expect(changedBy(() => addDesk(ctx, buildingId, { code: "2-14-02", zoneCode: "2-14" }))).toEqual(["zones"]);
  expect(changedBy(() => registerDevice(ctx, buildingId, heaterInput()))).toEqual(["devices"]);
  const report = { thermalSensation: -2, preference: "warmer" as const };
  expect(changedBy(() => fileComfortReport(ctx, token, report))).toEqual(["reports"]);
  const own = { value: 12, low: 11, high: 13, reason: "Read off the controller" };
  expect(changedBy(() => overrideAssumption(ctx, buildingId, "supply-air-temp", own))).toEqual(["assumptions"]);
  expect(changedBy(() => bringWeather({ ctx, buildingId }))).toEqual(["weather", "imports"]);
  const point = { buildingId, externalName: "air", fileUnit: "degC", sampling: "interval" as const, zoneId };
  expect(changedBy(() => upsertPoint(ctx.db, { ...point, kind: "zone-air-temp" }))).toEqual(["mapping", "pointIds"]);
  expect(changedBy(() => upsertPoint(ctx.db, { ...point, kind: "airflow" }))).toEqual(["mapping"]);
  expect(changedBy(() => withdrawOverride(ctx, buildingId, "supply-air-temp"))).toEqual(["assumptions"]);
});
