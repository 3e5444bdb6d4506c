import { and, count, countDistinct, eq, gte, inArray, placeholder } from "drizzle-orm";
import type { ReportState } from "@/lib/comfort-reports/report-state";
import type { Queryable } from "../client";
import { comfortReport, heldReport } from "../schema/comfort";
import { preparedOnce } from "./prepared";

const countTaken = preparedOnce((db) =>
  db
    .select({ reports: count() })
    .from(comfortReport)
    .where(
      and(eq(comfortReport.linkId, placeholder("linkId")), gte(comfortReport.reportedAtMs, placeholder("sinceMs"))),
    )
    .prepare(),
);
const countAside = preparedOnce((db) =>
  db
    .select({ reports: count() })
    .from(heldReport)
    .where(and(eq(heldReport.linkId, placeholder("linkId")), gte(heldReport.heldAtMs, placeholder("sinceMs"))))
    .prepare(),
);

/** Reports that a link has sent since a moment, taken and kept aside, for holding back a flood. */
export function countSentByLink(db: Queryable, linkId: number, sinceMs: number): number {
  const taken = countTaken(db).get({ linkId, sinceMs });
  const aside = countAside(db).get({ linkId, sinceMs });
  return (taken?.reports ?? 0) + (aside?.reports ?? 0);
}

/**
 * The least number of people whose reports a zone has, by zone id: each desk is one, and all reports without a desk are one
 * together.
 */
export function countPeopleByZone(db: Queryable, buildingId: number): Map<number, number> {
  const rows = db
    .select({
      zoneId: comfortReport.zoneId,
      desks: countDistinct(comfortReport.deskId),
      withDesk: count(comfortReport.deskId),
      all: count(),
    })
    .from(comfortReport)
    .where(eq(comfortReport.buildingId, buildingId))
    .groupBy(comfortReport.zoneId)
    .all();
  return new Map(rows.map(({ zoneId, desks, withDesk, all }) => [zoneId, desks + (all > withDesk ? 1 : 0)]));
}

/** Reports of each zone in some states, by zone id. */
export function countReportsInStates(
  db: Queryable,
  buildingId: number,
  states: readonly ReportState[],
): Map<number, number> {
  const rows = db
    .select({ zoneId: comfortReport.zoneId, reports: count() })
    .from(comfortReport)
    .where(and(eq(comfortReport.buildingId, buildingId), inArray(comfortReport.state, [...states])))
    .groupBy(comfortReport.zoneId)
    .all();
  return new Map(rows.map(({ zoneId, reports }) => [zoneId, reports]));
}
