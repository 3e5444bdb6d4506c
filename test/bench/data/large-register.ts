import type { AppDatabase } from "@/db/client";
import { device, deviceSetting } from "@/db/schema/device";
import { deviceEvent, inspection, inspectionItem } from "@/db/schema/device-life";
import { desk } from "@/db/schema/zone";
import { DEVICE_CLASSES } from "@/lib/electrical/device-classes";
import { seededRandom } from "@/lib/statistics/random";

const MS = Date.UTC(2026, 0, 15);
const STATUSES = ["found", "under-review", "approved-to-remain", "to-be-removed", "removed"] as const;
const BASES = ["clamp", "plug-meter", "nameplate", "class-default"] as const;

/** Invented devices spread over a building's zones: every class, every basis, every status; a third of them inspected. */
export function fillRegister(db: AppDatabase, buildingId: number, zoneIds: readonly number[], devices: number): void {
  const random = seededRandom(5000);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  db.transaction((tx) => {
    for (let i = 0; i < devices; i++) {
      const zoneId = zoneIds[i % zoneIds.length] as number;
      const deskId = tx.insert(desk).values({ buildingId, zoneId, code: `D-${i}` }).returning({ id: desk.id }).get().id;
      const deviceClass = pick(DEVICE_CLASSES);
      const status = pick(STATUSES);
      const basis = pick(BASES);
      const { id } = tx
        .insert(device)
        .values({
          buildingId,
          zoneId,
          deskId,
          kind: deviceClass.kind,
          deviceClass: deviceClass.id,
          label: `X-${String(i).padStart(5, "0")}`,
          foundOn: "2026-01-15",
          status,
          retiredOn: status === "removed" ? "2026-02-10" : null,
          nameplateW: 1500,
          createdAtMs: MS,
          updatedAtMs: MS,
        })
        .returning({ id: device.id })
        .get();
      tx.insert(deviceEvent)
        .values({ deviceId: id, status, onDate: "2026-01-15", enteredBy: "bench", enteredAtMs: MS })
        .run();
      deviceClass.settings.forEach(({ name, powerW }, position) => {
        const amperes = Number((powerW / deviceClass.nominalVoltageV).toFixed(2));
        tx.insert(deviceSetting)
          .values({
            deviceId: id,
            position,
            name,
            basis: name === "off" ? "class-default" : basis,
            rawReadingA: amperes,
            currentA: amperes,
            currentResolutionA: 0.01,
            voltageV: deviceClass.nominalVoltageV,
            voltageMeasured: true,
            powerW,
            nameplateW: powerW,
            hoursPerYear: name === "off" ? 0 : Math.round(300 * random()),
            dutyFraction: 0.7,
          })
          .run();
      });
      if (i % 3 > 0) continue;
      const seen = tx
        .insert(inspection)
        .values({
          deviceId: id,
          inspectedOn: "2026-01-20",
          checklist: "us-ifc-2018",
          enteredBy: "bench",
          enteredAtMs: MS,
        })
        .returning({ id: inspection.id })
        .get();
      for (const itemId of ["damaged", "clearance", "recall", "tip-over"])
        tx.insert(inspectionItem)
          .values({
            inspectionId: seen.id,
            itemId,
            severity: "correct-before-use",
            outcome: random() < 0.2 ? "fail" : "pass",
          })
          .run();
    }
  });
}
