import { expect, it } from "vitest";
import { findPointByName, upsertPoint } from "@/db/queries/points";
import { findBuildingOrRefuse } from "@/lib/services/buildings/find";
import { findSetpointMoves } from "@/lib/services/proposals/setpoint-moves";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { smallOffice } from "@/test/factories/office";
import { bytesOf } from "@/test/factories/trend-csv";

const MIDNIGHT = Date.UTC(2025, 4, 5, 5) / 1000;
const DAY = 86_400;

/** A zone of which the air is recorded every quarter of an hour and the setpoint as it changes: 21.5 °C by day, 29 °C by night. */
async function zoneWithRecord(daysRecorded: readonly number[]) {
  const office = smallOffice({ temperatureUnit: "C" });
  const { ctx, buildingId, zoneId } = office;
  const point = (
    externalName: string,
    kind: "zone-air-temp" | "cooling-setpoint",
    sampling: "interval" | "change-of-value",
  ) => upsertPoint(ctx.db, { buildingId, externalName, kind, zoneId, fileUnit: "degC", sampling }).id;
  const air = point("VAV-2-14 ZN-T", "zone-air-temp", "interval");
  const setpoint = point("VAV-2-14 CLG-SP", "cooling-setpoint", "change-of-value");
  const airTs = daysRecorded.flatMap((day) => Array.from({ length: 96 }, (_, i) => MIDNIGHT + day * DAY + 900 * i));
  const changes = daysRecorded.flatMap((day) => [
    { at: MIDNIGHT + day * DAY + 5 * 3600, tempC: 21.5 },
    { at: MIDNIGHT + day * DAY + 18.5 * 3600, tempC: 29 },
  ]);
  await ctx.trends.write(
    [
      { series: air, ts: Float64Array.from(airTs), v: Int32Array.from(airTs, () => 21_700), decimals: 3 },
      {
        series: setpoint,
        ts: Float64Array.from(changes, ({ at }) => at),
        v: Int32Array.from(changes, ({ tempC }) => 1000 * tempC),
        decimals: 3,
      },
    ],
    1,
  );
  return office;
}

const days = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, k) => from + k);

it("a setpoint that is told as it changes goes on being one after months in which it is told once a day", async () => {
  const { ctx, buildingId } = await zoneWithRecord(days(0, 14));
  const rows = days(0, 20).map((day) => {
    const stamp = new Date((MIDNIGHT + (40 + day) * DAY) * 1000).toISOString().slice(0, 19);
    return `${stamp}Z,21.5`;
  });
  const file = { name: "later.csv", bytes: bytesOf(["Timestamp,VAV-2-14 CLG-SP (°C)", ...rows]) };
  await importTrendFile(ctx, buildingId, file, { acceptProposals: true, answers: {} });
  const names = ["VAV-2-14 CLG-SP", "VAV-2-14 CLG-SP (°C)"];
  const points = names.flatMap((name) => findPointByName(ctx.db, buildingId, name) ?? []);
  expect(points.map(({ sampling }) => sampling)).toEqual(["change-of-value"]);
});

it("a value that holds through months without any record is no move of the setpoint", async () => {
  const { ctx, buildingId } = await zoneWithRecord([...days(0, 14), ...days(100, 114)]);
  expect(await findSetpointMoves(ctx, findBuildingOrRefuse(ctx, buildingId))).toEqual([]);
});
