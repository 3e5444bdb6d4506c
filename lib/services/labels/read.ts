import { listDesks, listZones } from "@/db/queries/zones";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { issueComfortLink, readComfortLinks } from "../comfort-links/manage";
import type { Context } from "../context";
import { readDevices } from "../devices/read";
import { ServiceError } from "../errors";

/** What a label leads to: a device's page, the walk at a desk, or the form of a comfort link. */
export const LABEL_KINDS = ["devices", "desks", "desk-reports", "zone-reports"] as const;
export type LabelKind = (typeof LABEL_KINDS)[number];

export const isLabelKind = (text: string): text is LabelKind => (LABEL_KINDS as readonly string[]).includes(text);

/** One label: what is printed large and small beside its code, and the path that the code leads to. */
export type PrintLabel = { head: string; lines: string[]; path: string };

export type LabelChoice = {
  kind: LabelKind;
  /** Floor of the zones; empty for all. */
  floor: string;
  /** Labels or codes to print, in this order; empty for all. */
  only: readonly string[];
};

/** Labels of a kind, and the desks or zones that have none because nobody has made their link. */
export function readLabels(
  ctx: Context,
  buildingId: number,
  choice: LabelChoice,
): { labels: PrintLabel[]; missing: string[] } {
  requireFacilities(ctx);
  const { name } = findBuildingOrRefuse(ctx, buildingId);
  const zones = listZones(ctx.db, buildingId);
  const floorOf = new Map(zones.map((zone) => [zone.code, zone.floor]));
  const isWanted = (code: string, zoneCode: string): boolean =>
    (choice.floor === "" || floorOf.get(zoneCode) === choice.floor) &&
    (choice.only.length === 0 || choice.only.includes(code));
  const path = `/buildings/${buildingId}`;
  const zoneCodes = new Map(zones.map((zone) => [zone.id, zone.code]));
  const desks = listDesks(ctx.db, buildingId).map((desk) => ({ ...desk, zoneCode: zoneCodes.get(desk.zoneId) ?? "" }));
  switch (choice.kind) {
    case "devices":
      return {
        labels: readDevices(ctx, buildingId)
          .filter((device) => device.retiredOn === null && isWanted(device.label, device.zoneCode))
          .map((device) => ({
            head: device.label,
            lines: [
              deviceClassById(device.deviceClass)?.label ?? "",
              device.deskCode ? `Desk ${device.deskCode}` : `Zone ${device.zoneCode}`,
              name,
            ],
            path: `${path}/devices/${device.id}`,
          })),
        missing: [],
      };
    case "desks":
      return {
        labels: desks
          .filter((desk) => isWanted(desk.code, desk.zoneCode))
          .map((desk) => ({
            head: desk.code,
            lines: [`Zone ${desk.zoneCode}`, name],
            path: `${path}/walk?desk=${encodeURIComponent(desk.code)}`,
          })),
        missing: [],
      };
    default:
      return reportLabels(
        ctx,
        buildingId,
        choice.kind === "desk-reports"
          ? desks
              .filter((desk) => isWanted(desk.code, desk.zoneCode))
              .map((desk) => ({ deskCode: desk.code, zoneCode: desk.zoneCode }))
          : zones
              .filter((zone) => isWanted(zone.code, zone.code))
              .map((zone) => ({ deskCode: null, zoneCode: zone.code })),
      );
  }
}

function reportLabels(
  ctx: Context,
  buildingId: number,
  places: readonly { deskCode: string | null; zoneCode: string }[],
): { labels: PrintLabel[]; missing: string[] } {
  const links = readComfortLinks(ctx, buildingId);
  const labels: PrintLabel[] = [];
  const missing: string[] = [];
  for (const { deskCode, zoneCode } of places) {
    const link = links.find((each) => each.deskCode === deskCode && each.zoneCode === zoneCode);
    if (!link) missing.push(deskCode ?? zoneCode);
    else
      labels.push({
        head: "Too cold, too warm?",
        lines: ["Scan and say so: no name needed.", deskCode ? `Desk ${deskCode}` : `Zone ${zoneCode}`],
        path: `/report/${link.token}`,
      });
  }
  return { labels, missing };
}

/** Makes the comfort links that labels of reports lack. Returns how many were made. */
export function makeMissingLinks(ctx: Context, buildingId: number, choice: LabelChoice): number {
  requireFacilities(ctx);
  if (choice.kind !== "desk-reports" && choice.kind !== "zone-reports")
    throw new ServiceError("invalid", "Only labels of comfort reports need links.");
  const missing = new Set(readLabels(ctx, buildingId, choice).missing);
  const zones = listZones(ctx.db, buildingId);
  const places =
    choice.kind === "zone-reports"
      ? zones.filter((zone) => missing.has(zone.code)).map((zone) => ({ zoneId: zone.id }))
      : listDesks(ctx.db, buildingId)
          .filter((desk) => missing.has(desk.code))
          .map((desk) => ({ zoneId: desk.zoneId, deskId: desk.id }));
  for (const place of places) issueComfortLink(ctx, buildingId, place);
  return places.length;
}
