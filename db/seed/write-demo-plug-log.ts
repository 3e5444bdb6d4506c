import { createHash } from "node:crypto";
import { and, asc, eq, isNull } from "drizzle-orm";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { reducePlugLog } from "@/lib/electrical/plug-log/reduce-plug-log";
import { withoutDates } from "@/lib/electrical/plug-log/without-dates";
import { settingPower } from "@/lib/electrical/setting-power";
import { zoneTable } from "@/lib/time/zone-table";
import type { AppTransaction } from "../client";
import { insertPlugLog } from "../queries/plug-logs";
import { device, deviceSetting } from "../schema/device";
import { DEMO_AUTHOR } from "./demo-building";
import { DEMO_OCCUPIED_HOURS, DEMO_TIME_ZONE, startOfLocalDate } from "./demo-calendar";
import { demoPlugReadings, LOGGED_FROM, LOGGED_UNTIL } from "./demo-plug-readings";

const LOGGED_CLASS = "fan-heater-1500";
const DAY_MS = 86_400_000;

/** Four weeks of a plug logger on the first fan heater that is in use, reviewed, its readings long deleted. */
export function writeDemoPlugLog(tx: AppTransaction, buildingId: number): void {
  const heater = tx
    .select()
    .from(device)
    .where(and(eq(device.buildingId, buildingId), eq(device.deviceClass, LOGGED_CLASS), isNull(device.retiredOn)))
    .orderBy(asc(device.id))
    .get();
  const deviceClass = deviceClassById(LOGGED_CLASS);
  if (!heater || !deviceClass) return;
  const settings = tx.select().from(deviceSetting).where(eq(deviceSetting.deviceId, heater.id)).all();
  const recorded = settings.flatMap((setting) => {
    const power = settingPower({ ...setting, kind: heater.kind, settingName: setting.name }, deviceClass);
    return power.status === "ok" ? [{ name: setting.name, onRecordW: power.powerW.value, basis: setting.basis }] : [];
  });
  const wattsOf = (name: string, usualW: number): number =>
    recorded.find((setting) => setting.name === name)?.onRecordW ?? usualW;
  const readings = demoPlugReadings({
    fanW: wattsOf("fan-only", 20),
    lowW: wattsOf("low-heat", 750),
    highW: wattsOf("high-heat", 1500),
  });
  const site = { occupiedHours: DEMO_OCCUPIED_HOURS, zone: zoneTable(DEMO_TIME_ZONE), settings: recorded };
  const reduced = reducePlugLog(readings, site);
  const rows = readings.powerW.length;
  const toMs = 1000 * startOfLocalDate(LOGGED_UNTIL);
  insertPlugLog(tx, {
    buildingId,
    deviceId: heater.id,
    fileName: `logger-${heater.label}.csv`,
    sha256: createHash("sha256").update(Buffer.from(readings.powerW.buffer)).digest("hex"),
    byteCount: readings.powerW.byteLength,
    fromMs: 1000 * startOfLocalDate(LOGGED_FROM),
    toMs,
    energyKwh: reduced.energyKwh,
    figures: withoutDates({
      ...reduced,
      unit: "w",
      quantity: "power",
      rows: { inFile: rows + 1, accepted: rows, repaired: 0, rejected: 0, ignored: 1 },
      readFindings: [],
      notes: [],
    }),
    standsFrom: "2026-05-15",
    standsTo: "2026-09-15",
    importedAtMs: toMs + DAY_MS,
    importedBy: DEMO_AUTHOR,
    reviewedAtMs: toMs + 4 * DAY_MS,
    reviewedBy: DEMO_AUTHOR,
    rawDeletedAtMs: toMs + 4 * DAY_MS,
  });
}
