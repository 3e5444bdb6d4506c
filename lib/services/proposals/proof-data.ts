import type { BuildingRow } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { listDevices } from "@/db/queries/devices";
import { listPoints } from "@/db/queries/points";
import { countDesksByZone } from "@/db/queries/zones";
import type { ProofDay } from "@/lib/proposals/proof/comparable-days";
import type { EnergyDay } from "@/lib/proposals/proof/energy-proof";
import type { ProofMeter } from "@/lib/proposals/proof/energy-working";
import type { DateWindow } from "@/lib/proposals/verification-plan";
import type { Counted } from "@/lib/statistics/rate-ratio";
import { localDateAt } from "@/lib/time/local-date";
import { isCold, isHot } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";
import { readMeterDays } from "../meter/meter-days";
import { metersOf } from "../meter/meters";
import { readZoneDays } from "./zone-days";

export type DatedProofDay = ProofDay & { date: string };
export type DatedEnergyDay = EnergyDay & { date: string };

const inWindow = (date: string, { from, to }: DateWindow): boolean => date >= from && date <= to;
export const within = <T extends { date: string }>(days: readonly T[], window: DateWindow): T[] =>
  days.filter((each) => inWindow(each.date, window));

/** Mean zone air and degree-hours below target of the zones together, by occupied day with outdoor air. */
export async function zoneAirDays(
  ctx: Context,
  building: BuildingRow,
  zoneIds: readonly number[],
): Promise<{ air: DatedProofDay[]; belowTarget: DatedProofDay[] }> {
  const read = await readZoneDays(
    ctx,
    building,
    {
      kind: "zone-air-temp",
      of: (grids) => grids.zoneAirTempC,
      targetOf: (zone) => zone.targetZoneAirTempC ?? building.targetZoneAirTempC,
    },
    zoneIds,
  );
  const byDate = new Map<string, { sum: number; kh: number; zones: number }>();
  for (const { days } of read?.zones ?? [])
    for (const { date, mean, belowTargetKh } of days) {
      const day = byDate.get(date) ?? { sum: 0, kh: 0, zones: 0 };
      byDate.set(date, { sum: day.sum + mean, kh: day.kh + belowTargetKh, zones: day.zones + 1 });
    }
  // A day that some of the zones miss would compare other zones.
  const all = read?.zones.length ?? 0;
  const dated = (of: (day: { sum: number; kh: number; zones: number }) => number): DatedProofDay[] =>
    [...byDate].flatMap(([date, day]) => {
      const outdoorC = read?.outdoorC.get(date);
      return outdoorC === undefined || day.zones < all ? [] : [{ date, outdoorC, value: of(day) }];
    });
  return { air: dated((day) => day.sum / day.zones), belowTarget: dated((day) => day.kh / day.zones) };
}

/** Occupied days of the building's first trended meter; null without one, or without an outdoor record. */
export async function meterDays(
  ctx: Context,
  building: BuildingRow,
): Promise<{ meter: ProofMeter; days: DatedEnergyDay[] } | null> {
  const meter = metersOf(ctx, building.id).find((each) => each.source === "point");
  const outdoor = listPoints(ctx.db, building.id).find(
    (each) => each.kind === "outdoor-air-temp" && each.zoneId === null,
  );
  if (meter?.source !== "point" || !outdoor) return null;
  const days = await readMeterDays(ctx, building, meter, outdoor, 3 * 366);
  return {
    meter: { name: meter.name, href: "/energy-meter" },
    days: days.flatMap(({ date, energyKwh, outdoorC, occupied }) =>
      occupied && !Number.isNaN(energyKwh) && !Number.isNaN(outdoorC) ? [{ date, energyKwh, outdoorC }] : [],
    ),
  };
}

/** Cold and hot reports of zones in a window, over desk-days with the zones occupied. */
export function reportCounts(
  ctx: Context,
  building: BuildingRow,
  zoneIds: readonly number[],
  window: DateWindow,
  occupiedDates: number,
): { cold: Counted; hot: Counted } {
  const desks = countDesksByZone(ctx.db, building.id);
  const exposure = zoneIds.reduce((sum, each) => sum + (desks.get(each) ?? 0), 0) * occupiedDates;
  const own = listComfortReports(ctx.db, building.id, 0).filter(
    (each) => zoneIds.includes(each.zoneId) && inWindow(localDateAt(each.reportedAtMs, building.timeZone), window),
  );
  const votes = own.map((each) => ({ ...each, desk: null, zoneAirTempC: null }));
  return {
    cold: { events: votes.filter(isCold).length, exposure },
    hot: { events: votes.filter(isHot).length, exposure },
  };
}

/** Space heaters on the register of zones at the end of a day. */
export const heatersOn = (ctx: Context, buildingId: number, zoneIds: readonly number[], date: string): number =>
  listDevices(ctx.db, buildingId).filter(
    (each) =>
      each.kind === "space-heater" &&
      zoneIds.includes(each.zoneId) &&
      each.foundOn <= date &&
      (each.retiredOn === null || each.retiredOn > date),
  ).length;
