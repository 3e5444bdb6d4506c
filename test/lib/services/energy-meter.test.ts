import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import { describe, expect, it, test } from "vitest";
import { findBuilding } from "@/db/queries/buildings";
import { listPoints } from "@/db/queries/points";
import { reviseBuilding } from "@/lib/services/buildings/save";
import { exportBuilding } from "@/lib/services/exports/export-building";
import { importTable } from "@/lib/services/imports/import-table";
import { meterAssumptions } from "@/lib/services/meter/assumptions-used";
import { readMeterDays } from "@/lib/services/meter/meter-days";
import { metersOf } from "@/lib/services/meter/meters";
import { readEnergyMeter } from "@/lib/services/meter/read";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { dayNumber, localDateFromDayNumber } from "@/lib/time/civil-date";
import { buildingInputOf } from "@/test/factories/building";
import { dayMeans, meterYearFile, PLANTED_METER } from "@/test/factories/meter-year";
import { smallOffice } from "@/test/factories/office";
import { bytesOf } from "@/test/factories/trend-csv";
import { refusalOf } from "@/test/support/refusal";

const RULE = { acceptProposals: true, answers: {} };

const file = { name: "meter.csv", bytes: meterYearFile() };

async function metered(changes: Parameters<typeof smallOffice>[0] = {}) {
  const office = smallOffice(changes);
  const report = await importTrendFile(office.ctx, office.buildingId, file, RULE);
  expect(report).toMatchObject({ outcome: "imported", rows: { rowsInFile: 8760, accepted: 8760 } });
  return office;
}

test("an hourly export becomes a model of occupied days, over both changes of the clock", async () => {
  const { ctx, buildingId } = await metered();
  expect(
    listPoints(ctx.db, buildingId)
      .map((point) => point.kind)
      .sort(),
  ).toEqual(["meter-power", "outdoor-air-temp"]);
  const { meters, shown } = await readEnergyMeter(ctx, buildingId);
  expect(meters).toHaveLength(1);
  expect(shown?.model).toMatchObject({ status: "ok", record: { count: 365, usable: 365 } });
  const occupied = shown?.model?.types[0];
  if (occupied?.choice.status !== "ok") throw new Error("no model");
  const { model, errors } = occupied.choice.chosen;
  if (model.kind !== "3PC") throw new Error(`a ${model.kind}`);
  // kWh a day of 24 hours; the two days of 23 and 25 are Sundays.
  const within = (value: number, planted: number, error = 0): void =>
    expect(Math.abs(value - planted)).toBeLessThan(3 * error);
  within(model.coolingSlope, 24 * PLANTED_METER.slopeKwPerK, errors.standardErrors.coolingSlope);
  within(model.coolingChangeC, PLANTED_METER.changeC, errors.standardErrors.coolingChangeC);
  within(model.base, 24 * PLANTED_METER.baseKw, errors.standardErrors.base);
});

test("days of 23 and 25 hours hold as many hours of power", async () => {
  const { ctx, buildingId } = await metered();
  const building = findBuilding(ctx.db, buildingId);
  const [meter] = metersOf(ctx, buildingId);
  const outdoor = listPoints(ctx.db, buildingId).find((point) => point.kind === "outdoor-air-temp");
  if (!building || meter?.source !== "point" || !outdoor) throw new Error("nothing was imported");
  const days = await readMeterDays(ctx, building, meter, outdoor);
  const energyOf = (date: string): number => days.find((day) => day.date === date)?.energyKwh ?? Number.NaN;
  expect(energyOf("2025-03-09") / 23).toBeCloseTo(PLANTED_METER.idleKw, 0);
  expect(energyOf("2025-11-02") / 25).toBeCloseTo(PLANTED_METER.idleKw, 0);
  expect(days.filter((day) => day.occupied)).toHaveLength(261);
});

test("a kelvin is worth energy and money with a working, and is kept until something changes", async () => {
  const { ctx, buildingId } = await metered();
  const first = (await readEnergyMeter(ctx, buildingId)).shown;
  if (!first?.worth) throw new Error("nothing worth");
  const { energy, money } = first.worth;
  expect(money.stated).toBeCloseTo(energy.savingKwh * 0.09, 9);
  expect(money.working.result.value).toBe(money.stated);
  expect(money.range.p10).toBeLessThan(money.stated);
  expect(money.range.p90).toBeGreaterThan(money.stated);
  expect(first.worth.year).toBe("the recorded year");
  // High minimum airflow without zone trends: 0.40 of the hours at the setpoint, of which 0.75 is sensible.
  expect(energy.response).toBeCloseTo(0.4 * 0.75, 9);
  expect(meterAssumptions(ctx, buildingId).sort()).toEqual([
    "sensible-coil-load-share",
    "setpoint-floor-area-share",
    "state-share-cooling/vav-reheat-high-minimum",
  ]);
  const kept = () => ctx.results.stamp(buildingId, `energy-meter/${first.key}`)?.restsOn;
  const before = kept();
  expect((await readEnergyMeter(ctx, buildingId)).shown?.worth).toEqual(first.worth);
  expect(kept()).toBe(before);
  reviseBuilding(ctx, buildingId, buildingInputOf({ electricityPriceKind: "blended", electricityPricePerKwh: 0.2 }));
  const blended = (await readEnergyMeter(ctx, buildingId)).shown?.worth;
  expect(blended?.money.stated).toBeCloseTo(energy.savingKwh * 0.2 * 0.8, 9);
  const width = ({ p10, p50, p90 }: { p10: number; p50: number; p90: number }): number => (p90 - p10) / p50;
  expect(width(blended?.money.range ?? money.range)).toBeGreaterThan(width(money.range));
});

test("bills with the outdoor air of their days make a model of their own", async () => {
  const { ctx, buildingId } = await metered();
  const lines = ["month,energy_kWh"];
  for (let month = 1; month <= 12; month++) {
    let energyKwh = 0;
    for (
      let day = dayNumber(2025, month, 1);
      localDateFromDayNumber(day).startsWith(`2025-${String(month).padStart(2, "0")}`);
      day++
    )
      energyKwh += 960 + 72 * Math.max(0, (dayMeans.get(day) ?? 0) - 14);
    lines.push(`2025-${String(month).padStart(2, "0")},${energyKwh.toFixed(1)}`);
  }
  importTable(ctx, buildingId, "bills", { name: "bills.csv", bytes: bytesOf(lines) });
  const { meters, shown } = await readEnergyMeter(ctx, buildingId, "bills");
  expect(meters.map((each) => each.key)).toContain("bills");
  expect(shown?.model).toMatchObject({ status: "ok", length: "bill", record: { usable: 12 } });
  expect(shown?.worth?.energy.byType.map((each) => each.type)).toEqual(["bills"]);
  const exported = (await exportBuilding(ctx, buildingId)).find((each) => each.fileName === "bills.csv");
  const again = importTable(ctx, buildingId, "bills", { name: "bills.csv", bytes: bytesOf([exported?.text ?? ""]) });
  expect([again.samplesAdded, again.samplesChanged, again.samplesSame]).toEqual([0, 0, 12]);
});

describe("says why there is no figure", () => {
  it("without a meter, and for a meter that is not there", async () => {
    const { ctx, buildingId } = smallOffice();
    expect(await readEnergyMeter(ctx, buildingId)).toEqual({ meters: [], shown: null });
    await expect(readEnergyMeter(ctx, buildingId, "99")).rejects.toMatchObject({ code: "not-found" });
    expect((await refusalOf(() => readEnergyMeter({ ...ctx, actor: { kind: "anonymous" } }, buildingId))).code).toBe(
      "unauthenticated",
    );
  });

  it("without outdoor air, and for a part of a year", async () => {
    const { ctx, buildingId } = smallOffice();
    const text = new TextDecoder().decode(file.bytes).trim().split("\n");
    const meterOnly = bytesOf(text.map((row) => row.split(",").slice(0, 2).join(",")));
    await importTrendFile(ctx, buildingId, { name: "meter.csv", bytes: meterOnly }, RULE);
    const { shown } = await readEnergyMeter(ctx, buildingId);
    expect(shown).toMatchObject({ model: null, worth: null, findings: [{ code: "outdoor-missing" }] });
    const half = smallOffice();
    const part = { name: "half.csv", bytes: bytesOf(text.slice(0, 4500)) };
    await importTrendFile(half.ctx, half.buildingId, part, RULE);
    const of = (await readEnergyMeter(half.ctx, half.buildingId)).shown;
    expect(of).toMatchObject({ model: { status: "refused" }, worth: null });
    expect(of?.findings.map((each) => each.code)).toContain("days-few");
  });
});

const LIBRARY = fileURLToPath(new URL("../../../../shared/data/meter-15min/City_Library_2019.csv.gz", import.meta.url));

describe.skipIf(!existsSync(LIBRARY))("a municipal library's quarter hours (meter-15min)", () => {
  it("add up to the sum of the set's description, but for its two held-back rows and the days at its ends", async () => {
    const { ctx, buildingId } = smallOffice();
    const bytes = new Uint8Array(gunzipSync(readFileSync(LIBRARY)));
    const report = await importTrendFile(ctx, buildingId, { name: "City_Library_2019.csv", bytes }, RULE);
    expect(report.rows).toMatchObject({ rowsInFile: 33_118, accepted: 33_112, repaired: 4, heldBack: 2 });
    const [point] = listPoints(ctx.db, buildingId);
    expect(point).toMatchObject({ kind: "meter-power", fileUnit: "kW", externalName: "kW" });
    const building = findBuilding(ctx.db, buildingId);
    const [meter] = metersOf(ctx, buildingId);
    if (!building || meter?.source !== "point" || !point) throw new Error("nothing was imported");
    const days = await readMeterDays(ctx, building, meter, point);
    const sum = days.reduce((total, day) => total + (Number.isNaN(day.energyKwh) ? 0 : day.energyKwh), 0);
    expect(days.length).toBeGreaterThan(340);
    expect(Math.abs(sum / 295_393.05 - 1)).toBeLessThan(0.003);
  });
});
