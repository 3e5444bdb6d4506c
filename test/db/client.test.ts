import { eq } from "drizzle-orm";
import { beforeEach, expect, test } from "vitest";
import { type AppDatabase, inTransaction, openAppDatabase } from "@/db/client";
import { building, holiday, occupiedInterval } from "@/db/schema/building";
import { device, deviceSetting } from "@/db/schema/device";
import { zone } from "@/db/schema/zone";
import { insertTestBuilding } from "../support/test-building";
import { TEST_NOW } from "../support/test-clock";

let db: AppDatabase;
let buildingId: number;
beforeEach(() => {
  db = openAppDatabase(":memory:");
  buildingId = insertTestBuilding(db);
});

test("the migrations make every table of the schema on an empty database", () => {
  const empty = openAppDatabase(":memory:");
  const made = empty.$client.prepare("select name from sqlite_schema where type = 'table'").pluck().all();
  const wanted = Object.keys(empty._.schema ?? {});
  expect(wanted.length).toBeGreaterThan(10);
  for (const table of Object.values(empty._.schema ?? {})) expect(made).toContain(table.dbName);
});

test("a row that hangs on nothing is refused, and a building takes its rows along", () => {
  const zoneOf = (id: number) => () => db.insert(zone).values({ buildingId: id, code: "1-01" }).run();
  expect(zoneOf(buildingId + 1)).toThrow("FOREIGN KEY");
  zoneOf(buildingId)();
  db.delete(building).where(eq(building.id, buildingId)).run();
  expect(db.select().from(zone).all()).toEqual([]);
});

/** What SQLite says, also where the query builder wraps it. */
function refusal(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    const cause = error instanceof Error ? error.cause : undefined;
    return `${error} ${cause}`;
  }
  return "accepted";
}

test("a demand price goes with a marginal energy price only", () => {
  const add = (electricityPriceKind: "marginal" | "blended", demandPricePerKw: number) =>
    refusal(() => insertTestBuilding(db, { electricityPriceKind, demandPricePerKw }));
  expect(add("blended", 12)).toContain("building_demand");
  expect(add("marginal", -1)).toContain("building_demand");
  expect(add("marginal", 12)).toBe("accepted");
});

test("an occupied interval lies in one day and ends after it begins", () => {
  const add = (startMinute: number, endMinute: number, weekday = 1) =>
    refusal(() => db.insert(occupiedInterval).values({ buildingId, weekday, startMinute, endMinute }).run());
  expect(add(1020, 480)).toContain("occupied_order");
  expect(add(480, 480)).toContain("occupied_order");
  expect(add(480, 1441)).toContain("occupied_order");
  expect(add(480, 1020, 0)).toContain("occupied_weekday");
  expect(add(480, 1020, 8)).toContain("occupied_weekday");
  expect(add(0, 1440, 7)).toBe("accepted");
});

test("measured values out of any physical range are refused", () => {
  const zoneId = db.insert(zone).values({ buildingId, code: "1-01" }).returning({ id: zone.id }).get().id;
  const found = {
    buildingId,
    zoneId,
    kind: "space-heater" as const,
    deviceClass: "ceramic",
    label: "H-1",
    foundOn: "2025-06-30",
    createdAtMs: TEST_NOW,
    updatedAtMs: TEST_NOW,
  };
  const deviceId = db.insert(device).values(found).returning({ id: device.id }).get().id;
  let position = 0;
  const add = (values: Partial<typeof deviceSetting.$inferInsert>) =>
    refusal(() =>
      db
        .insert(deviceSetting)
        .values({ deviceId, position: position++, name: "high", basis: "clamp", ...values })
        .run(),
    );
  expect(add({ currentA: 1500 })).toContain("setting_current");
  expect(add({ currentA: -9 })).toContain("setting_current");
  expect(add({ voltageV: 12 })).toContain("setting_voltage");
  expect(add({ powerFactor: 0 })).toContain("setting_power_factor");
  expect(add({ powerW: -1 })).toContain("setting_power");
  expect(add({ hoursPerYear: 8785 })).toContain("setting_hours");
  expect(add({ dutyFraction: 1.01 })).toContain("setting_duty");
  expect(add({ currentA: 8.98, voltageV: 120, hoursPerYear: 2000 })).toBe("accepted");
});

const someHolidays = (tx: Pick<AppDatabase, "insert">) =>
  tx
    .insert(holiday)
    .values([
      { buildingId, date: "2025-12-25" },
      { buildingId, date: "2025-12-26" },
    ])
    .run();
const kept = () => db.select().from(holiday).all().length;

test("a transaction gives back its result and keeps its rows", () => {
  expect(inTransaction(db, (tx) => someHolidays(tx).changes)).toBe(2);
  expect(kept()).toBe(2);
});

test("a transaction that throws keeps nothing", () => {
  const failing = () =>
    inTransaction(db, (tx) => {
      someHolidays(tx);
      throw new Error("second thoughts");
    });
  expect(failing).toThrow("second thoughts");
  expect(kept()).toBe(0);
});

test("a transaction refuses a Promise, by its type and with nothing kept", () => {
  const asynchronous = () =>
    // @ts-expect-error a callback that returns a Promise does not fit the type
    inTransaction(db, async (tx) => {
      someHolidays(tx);
    });
  expect(asynchronous).toThrow("must not return a Promise");
  expect(kept()).toBe(0);
});
