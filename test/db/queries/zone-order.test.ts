import { expect, it } from "vitest";
import { listDevices } from "@/db/queries/devices";
import { listDesks, listZones } from "@/db/queries/zones";
import { addDesk } from "@/lib/services/desks/save";
import { registerDevice } from "@/lib/services/devices/register";
import { addZone } from "@/lib/services/zones/save";
import { heaterInput, smallOffice } from "@/test/factories/office";

it("lists zones, desks and devices with 2 before 10, zones by floor first", () => {
  const { ctx, buildingId } = smallOffice();
  for (const code of ["VAV-10", "VAV-2", "VAV-1"]) addZone(ctx, buildingId, { code, floor: "10" });
  addZone(ctx, buildingId, { code: "VAV-30", floor: "9" });
  for (const code of ["VAV-2-D10", "VAV-2-D9"]) addDesk(ctx, buildingId, { code, zoneCode: "VAV-2" });
  for (const label of ["H-10", "H-9"])
    registerDevice(ctx, buildingId, heaterInput({ label, zoneCode: "VAV-2", deskCode: "" }));
  const codes = (rows: readonly { code: string }[]) => rows.map(({ code }) => code);
  expect(codes(listZones(ctx.db, buildingId))).toEqual(["2-14", "2-15", "VAV-30", "VAV-1", "VAV-2", "VAV-10"]);
  expect(codes(listDesks(ctx.db, buildingId)).slice(-2)).toEqual(["VAV-2-D9", "VAV-2-D10"]);
  expect(listDevices(ctx.db, buildingId).map(({ label }) => label)).toEqual(["H-9", "H-10"]);
});
