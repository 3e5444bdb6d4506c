import { expect, it } from "vitest";
import { dailyRows } from "@/app/buildings/[buildingId]/zones/[zoneId]/view-model";
import { readZoneDays } from "@/lib/services/zones/days";
import { readZoneHistory } from "@/lib/services/zones/history";
import { readZonesOverview } from "@/lib/services/zones/overview";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";

const SHOWN = { temperatureUnit: "F", timeZone: "America/Chicago", targetZoneAirTempC: 23 } as const;

it("shows the days of the period in the building's unit, with hours and degree-hours that can be checked by hand", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const history = await readZoneHistory(office.ctx, office.buildingId, office.zoneId, { from: "2025-06-10", days: 2 });
  const days = await readZoneDays(office.ctx, office.buildingId, office.zoneId);
  const rows = dailyRows(history, days, SHOWN);
  expect(rows.map(({ date }) => date)).toEqual(["2025-06-10", "2025-06-11"]);
  // 21.5 °C all day: 11 occupied hours 1.5 K below 23 °C. The state is not told, since nobody knows the minimum airflow.
  expect(rows[0]).toMatchObject({
    mean: "70.7",
    lowest: "70.7",
    highest: "70.7",
    otherHours: "11.0",
    coolingHours: "0.0",
    belowTargetKh: "16.5",
  });
});

it("has days that add up to the zone's exposure, and none for a zone without trends", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const { zones } = await readZonesOverview(office.ctx, office.buildingId);
  const exposure = zones.find(({ zone }) => zone.id === office.zoneId)?.analysis?.exposure;
  const days = await readZoneDays(office.ctx, office.buildingId, office.zoneId);
  const states = exposure?.byState;
  if (!states) throw new Error("no exposure");
  const wantedKh = OCCUPIED_STATES.reduce((sum, state) => sum + states[state].overcoolingKh, 0);
  expect(days.reduce((sum, day) => sum + day.exposure.overcoolingKh, 0)).toBeCloseTo(wantedKh, 9);
  expect(days.reduce((sum, day) => sum + day.exposure.countedHours, 0)).toBeCloseTo(exposure.coolingSeasonHours, 9);
  // The record begins at midnight UTC, the evening before by the building's clock.
  expect(days[0]).toMatchObject({ date: "2025-06-01", zoneAir: { value: null, reason: "below-coverage" } });
  expect(await readZoneDays(office.ctx, office.buildingId, office.otherZoneId)).toEqual([]);
});
