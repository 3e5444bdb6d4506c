import { and, eq, lt, max, sql } from "drizzle-orm";
import type { AppTransaction } from "../client";
import { building, holiday, occupiedInterval } from "../schema/building";
import { comfortLink, comfortReport } from "../schema/comfort";
import { device, deviceSetting } from "../schema/device";
import { deviceEvent } from "../schema/device-life";
import { desk, zone } from "../schema/zone";
import { DEMO_AUTHOR, DEMO_BUILDING } from "./demo-building";
import { DEMO_HOLIDAYS, DEMO_OCCUPIED_HOURS, startOfLocalDate } from "./demo-calendar";
import type { DevicePlan } from "./device-plan";
import type { SettingRow } from "./device-settings";
import type { ReportDraft } from "./draw-reports";
import { streamOf } from "./normal";
import type { SimulatedZone } from "./simulate-plan";

/** The building with its occupied hours and holidays; gives back its id. */
export function writeBuilding(tx: AppTransaction, now: number): number {
  const { id } = tx
    .insert(building)
    .values({ ...DEMO_BUILDING, createdAtMs: now, updatedAtMs: now })
    .returning({ id: building.id })
    .get();
  for (const [weekday, intervals] of Object.entries(DEMO_OCCUPIED_HOURS.weekdays))
    for (const each of intervals ?? [])
      tx.insert(occupiedInterval)
        .values({ ...each, buildingId: id, weekday: Number(weekday) })
        .run();
  tx.insert(holiday)
    .values(DEMO_HOLIDAYS.map((each) => ({ ...each, buildingId: id })))
    .run();
  return id;
}

export type ZoneIds = { zoneId: number; deskIds: number[] };

/** A zone with its desks, in the order of the plan. */
export function writeZone(tx: AppTransaction, buildingId: number, { plan, desks }: SimulatedZone): ZoneIds {
  const { id } = tx
    .insert(zone)
    .values({
      buildingId,
      code: plan.code,
      name: plan.name,
      floor: plan.floor,
      floorAreaM2: plan.floorAreaM2,
      airHandler: plan.unit === "packaged" ? `RTU-${plan.code}` : "AHU-1",
      designAirflowM3ps: plan.model.designAirflowM3ps,
      minimumAirflowM3ps: plan.unit === "packaged" ? null : plan.model.minimumAirflowM3ps,
    })
    .returning({ id: zone.id })
    .get();
  const deskIds = desks.map(
    ({ code }) => tx.insert(desk).values({ buildingId, zoneId: id, code }).returning({ id: desk.id }).get().id,
  );
  return { zoneId: id, deskIds };
}

export function writeDevice(
  tx: AppTransaction,
  place: { buildingId: number; zoneId: number; deskId: number | null },
  plan: DevicePlan,
  settings: readonly SettingRow[],
): void {
  const foundAtMs = 1000 * (startOfLocalDate(plan.foundOn) + 10 * 3600);
  const { id } = tx
    .insert(device)
    .values({
      ...place,
      kind: plan.deviceClass.kind,
      deviceClass: plan.deviceClass.id,
      label: plan.label,
      hasThermostat: plan.deviceClass.hasThermostat,
      foundOn: plan.foundOn,
      retiredOn: plan.retiredOn,
      status: plan.retiredOn ? "removed" : "found",
      note: plan.note,
      createdAtMs: foundAtMs,
      updatedAtMs: plan.retiredOn ? 1000 * (startOfLocalDate(plan.retiredOn) + 10 * 3600) : foundAtMs,
    })
    .returning({ id: device.id })
    .get();
  const step = (status: "found" | "removed", onDate: string) =>
    tx
      .insert(deviceEvent)
      .values({
        deviceId: id,
        status,
        onDate,
        enteredBy: DEMO_AUTHOR,
        enteredAtMs: 1000 * (startOfLocalDate(onDate) + 10 * 3600),
      })
      .run();
  step("found", plan.foundOn);
  if (plan.retiredOn) step("removed", plan.retiredOn);
  for (const setting of settings)
    tx.insert(deviceSetting)
      .values({ ...setting, deviceId: id })
      .run();
}

/** Links of a zone: one for the zone, and one for every desk with a device and every third of the others. */
export function writeLinks(
  tx: AppTransaction,
  place: { buildingId: number; zoneCode: string; createdAtMs: number },
  ids: ZoneIds,
  desksWithDevice: ReadonlySet<number>,
): { zoneLinkId: number; deskLinkIds: Map<number, number> } {
  const random = streamOf(`${place.zoneCode}/links`);
  const write = (deskId: number | null): number => {
    const token = Buffer.from(Array.from({ length: 16 }, () => Math.floor(256 * random()))).toString("base64url");
    const { buildingId, createdAtMs } = place;
    return tx
      .insert(comfortLink)
      .values({ buildingId, zoneId: ids.zoneId, deskId, token, createdAtMs, createdBy: DEMO_AUTHOR })
      .returning({ id: comfortLink.id })
      .get().id;
  };
  const zoneLinkId = write(null);
  const deskLinkIds = new Map<number, number>();
  ids.deskIds.forEach((deskId, d) => {
    if (desksWithDevice.has(d) || d % 3 === 2) deskLinkIds.set(d, write(deskId));
  });
  return { zoneLinkId, deskLinkIds };
}

/** A report, through the link of its desk where there is one and else through the link of the zone. */
export function writeReport(
  tx: AppTransaction,
  place: { buildingId: number; ids: ZoneIds; links: ReturnType<typeof writeLinks>; submissionId: string },
  { desk: at, atUtcSeconds, ...values }: ReportDraft,
): void {
  const deskLinkId = place.links.deskLinkIds.get(at);
  tx.insert(comfortReport)
    .values({
      ...values,
      buildingId: place.buildingId,
      zoneId: place.ids.zoneId,
      deskId: deskLinkId === undefined ? null : (place.ids.deskIds[at] ?? null),
      linkId: deskLinkId ?? place.links.zoneLinkId,
      reportedAtMs: 1000 * atUtcSeconds,
      submissionId: place.submissionId,
    })
    .run();
}

/** How long reports of the demo stay open [ms]: its office closes what is a month old. */
const OPEN_MS = 30 * 86_400_000;

/** Closes the old reports of the demo, each a day after it came. */
export function closeOldReports(tx: AppTransaction, buildingId: number): void {
  const own = eq(comfortReport.buildingId, buildingId);
  const newest =
    tx
      .select({ atMs: max(comfortReport.reportedAtMs) })
      .from(comfortReport)
      .where(own)
      .get()?.atMs ?? 0;
  tx.update(comfortReport)
    .set({ state: "closed", closedAtMs: sql`${comfortReport.reportedAtMs} + 86400000` })
    .where(and(own, lt(comfortReport.reportedAtMs, newest - OPEN_MS)))
    .run();
}
