import { expect, it } from "vitest";
import { belowTargetPct, zoneLines, zonesLede } from "@/app/buildings/[buildingId]/zones/view-model";
import { registerDevice } from "@/lib/services/devices/register";
import { readZonesOverview } from "@/lib/services/zones/overview";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";

it("shows what a zone's trends say in the building's unit, and nothing for a zone without trends", async () => {
  const office = smallOffice();
  registerDevice(office.ctx, office.buildingId, heaterInput());
  await bringTrends(office);
  const overview = await readZonesOverview(office.ctx, office.buildingId);
  const byCode = (unit: "C" | "F") =>
    new Map(zoneLines(overview, { temperatureUnit: unit }).map((each) => [each.code, each]));
  // 21.5 °C throughout is 70.7 °F, and below the target of 23 °C all the time.
  expect(byCode("F").get("2-14")).toMatchObject({
    mean: "70.7",
    coldest: "70.7",
    setpoint: "70.7",
    belowPct: "100",
    desks: 1,
    heaters: 1,
    fans: 0,
  });
  expect(byCode("C").get("2-14")?.mean).toBe("21.5");
  expect(byCode("F").get("2-15")).toMatchObject({ mean: "", coldest: "", setpoint: "", belowPct: "", verdict: null });
  expect(zonesLede(overview)).toMatch(/^2 zones, 1 with trends: /);
});

it("has a sentence for a building without zones, and no share where no hour counts", () => {
  expect(zonesLede({ zones: [], record: null })).toContain("spaces that the controllers serve");
  expect(belowTargetPct({ analysis: null })).toBe("");
});
