import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { afterEach, expect, it } from "vitest";
import { openAppDatabase } from "@/db/client";
import { findDevice } from "@/db/queries/devices";
import { deviceEvent } from "@/db/schema/device-life";

const MIGRATIONS = "db/migrations";
const folder = mkdtempSync(path.join(tmpdir(), "migration-"));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A database as it was before devices had a life of their own, with two devices in it. */
function databaseOfBefore(file: string): void {
  const before = path.join(folder, "migrations");
  cpSync(MIGRATIONS, before, { recursive: true });
  const journal = path.join(before, "meta", "_journal.json");
  const { entries, ...rest } = JSON.parse(readFileSync(journal, "utf8")) as { entries: { tag: string }[] };
  const upTo = entries.findIndex(({ tag }) => tag.endsWith("_device_register"));
  writeFileSync(journal, JSON.stringify({ ...rest, entries: entries.slice(0, upTo) }));
  const client = new Database(file);
  migrate(drizzle(client), { migrationsFolder: before });
  client.exec(`
    insert into building (id, name, time_zone, currency, temperature_unit, area_unit, floor_area_m2, system_type,
      electricity_price_kind, electricity_price_per_kwh, created_at_ms, updated_at_ms)
      values (1, 'Old office', 'America/Chicago', 'USD', 'F', 'ft2', 900, 'single-zone-dx', 'marginal', 0.12, 1, 1);
    insert into zone (id, building_id, code) values (1, 1, '1-01');
    insert into desk (id, building_id, zone_id, code) values (1, 1, 1, '1-01-01');
    insert into device (id, building_id, zone_id, desk_id, kind, device_class, label, found_on, retired_on,
      created_at_ms, updated_at_ms) values
      (1, 1, 1, 1, 'space-heater', 'fan-heater-1500', 'H-1', '2025-01-10', null, 111, 222),
      (2, 1, 1, null, 'personal-fan', 'desk-fan', 'F-1', '2025-02-11', '2025-03-12', 333, 444);
    insert into device_setting (device_id, position, name, basis, current_a, power_w, hours_per_year) values
      (1, 0, 'high-heat', 'clamp', 11.4, null, 400),
      (1, 1, 'low-heat', 'nameplate', null, 750, 100),
      (2, 0, 'high-speed', 'plug-meter', null, 33.5, 900);
  `);
  client.close();
}

it("keeps every device with its readings, and gives it the life that its dates tell of", () => {
  const file = path.join(folder, "app.db");
  databaseOfBefore(file);
  const db = openAppDatabase(file);
  const heater = findDevice(db, 1, 1);
  expect(heater).toMatchObject({ label: "H-1", deskId: 1, status: "found", retiredOn: null, circuitId: null });
  expect(heater?.settings).toMatchObject([
    { name: "high-heat", rawReadingA: 11.4, clampTurns: 1, currentA: 11.4, hoursPerYear: 400, useBasis: "entered" },
    { name: "low-heat", basis: "nameplate", nameplateW: 750, powerW: null },
  ]);
  const fan = findDevice(db, 1, 2);
  expect(fan).toMatchObject({ label: "F-1", status: "removed", retiredOn: "2025-03-12" });
  expect(fan?.settings).toMatchObject([{ basis: "plug-meter", powerW: 33.5, nameplateW: null, rawReadingA: null }]);
  expect(
    db
      .select()
      .from(deviceEvent)
      .all()
      .map(({ deviceId, status, onDate, enteredAtMs }) => [deviceId, status, onDate, enteredAtMs]),
  ).toEqual([
    [1, "found", "2025-01-10", 111],
    [2, "found", "2025-02-11", 333],
    [2, "removed", "2025-03-12", 444],
  ]);
  expect(db.$client.pragma("foreign_key_check")).toEqual([]);
  db.$client.close();
});
