import { createBuilding } from "@/lib/services/buildings/save";
import { addDesk } from "@/lib/services/desks/save";
import type { DeviceInput } from "@/lib/services/devices/device-input";
import { addZone } from "@/lib/services/zones/save";
import { testContext } from "@/test/support/database";
import { buildingInputOf } from "./building";

/** A building with two zones and a desk in each, in databases of its own. */
export function smallOffice(changes: Parameters<typeof buildingInputOf>[0] = {}) {
  const ctx = testContext();
  const buildingId = createBuilding(ctx, buildingInputOf(changes));
  const zoneId = addZone(ctx, buildingId, { code: "2-14", name: "Open office", floorAreaM2: 120 });
  const otherZoneId = addZone(ctx, buildingId, { code: "2-15", floorAreaM2: 60 });
  const deskId = addDesk(ctx, buildingId, { code: "2-14-01", zoneCode: "2-14" });
  addDesk(ctx, buildingId, { code: "2-15-01", zoneCode: "2-15" });
  return { ctx, buildingId, zoneId, otherZoneId, deskId };
}

/** A 1500 W fan heater with one clamp reading. */
export function heaterInput(changes: Partial<DeviceInput> = {}): DeviceInput {
  return {
    label: "H-001",
    kind: "space-heater",
    deviceClass: "fan-heater-1500",
    zoneCode: "2-14",
    deskCode: "2-14-01",
    foundOn: "2025-06-20",
    settings: [settingInput()],
    ...changes,
  };
}

export function settingInput(changes: Partial<DeviceInput["settings"][number]> = {}): DeviceInput["settings"][number] {
  return { name: "high-heat", basis: "clamp", currentA: 11.44, voltageV: 120, hoursPerYear: 400, ...changes };
}
