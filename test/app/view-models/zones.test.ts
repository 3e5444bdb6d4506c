import { expect, it } from "vitest";
import { summaryItems } from "@/app/buildings/[buildingId]/overview-view-model";
import { belowTargetPct, zoneLines, zonesLede } from "@/app/buildings/[buildingId]/zones/view-model";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
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

it("shows no counts of reports of so few people", async () => {
  const office = smallOffice();
  for (const zoneCode of ["2-14", "2-15"])
    for (let i = 0; i < 2; i++)
      logComfortReport(office.ctx, office.buildingId, {
        origin: "phone",
        zoneCode,
        thermalSensation: -2,
        preference: "warmer",
      });
  const overview = await readZonesOverview(office.ctx, office.buildingId);
  expect(zoneLines(overview, { temperatureUnit: "C" }).map((each) => each.coldReports)).toEqual(["merged", "merged"]);
  expect(overview.reports.totals).toEqual({ cold: null, hot: null });
  const words = summaryItems(overview, { temperatureUnit: "C", targetZoneAirTempC: 23 });
  expect(words.find(({ term }) => term === "Comfort reports")?.value).toBe(
    "not shown, since too few people have reported",
  );
});

it("has a sentence for a building without zones, and no share where no hour counts", () => {
  expect(zonesLede({ zones: [] })).toContain("spaces that the controllers serve");
  expect(belowTargetPct({ analysis: null })).toBe("");
});
