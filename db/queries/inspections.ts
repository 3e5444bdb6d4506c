import { and, asc, desc, eq, isNull, sql } from "drizzle-orm";
import type { Queryable } from "../client";
import { device } from "../schema/device";
import { inspection, inspectionItem } from "../schema/device-life";

export type InspectionRow = typeof inspection.$inferSelect;
export type InspectionItemRow = typeof inspectionItem.$inferSelect;
export type NewInspection = typeof inspection.$inferInsert;
export type NewInspectionItem = typeof inspectionItem.$inferInsert;
export type InspectionWithItems = InspectionRow & { items: InspectionItemRow[] };
export type OpenItem = InspectionItemRow & { deviceId: number; inspectedOn: string };

export function insertInspection(
  db: Queryable,
  row: NewInspection,
  items: readonly Omit<NewInspectionItem, "inspectionId">[],
): InspectionRow {
  const kept = db.insert(inspection).values(row).returning().get();
  for (const item of items)
    db.insert(inspectionItem)
      .values({ ...item, inspectionId: kept.id })
      .run();
  return kept;
}

/** Inspections of a device, the newest first, each with what was seen. */
export function listInspections(db: Queryable, deviceId: number): InspectionWithItems[] {
  const rows = db
    .select()
    .from(inspection)
    .where(eq(inspection.deviceId, deviceId))
    .orderBy(desc(inspection.inspectedOn), desc(inspection.id))
    .all();
  const items = db
    .select({ item: inspectionItem })
    .from(inspectionItem)
    .innerJoin(inspection, eq(inspection.id, inspectionItem.inspectionId))
    .where(eq(inspection.deviceId, deviceId))
    .orderBy(asc(inspectionItem.id))
    .all();
  return rows.map((row) => ({
    ...row,
    items: items.flatMap(({ item }) => (item.inspectionId === row.id ? item : [])),
  }));
}

/** Failed items that nobody has put right yet; one that was seen again counts as it was seen last. */
export function listOpenItems(db: Queryable, deviceId: number): OpenItem[] {
  return openItems(db, eq(inspection.deviceId, deviceId));
}

export function listOpenItemsOfBuilding(db: Queryable, buildingId: number): OpenItem[] {
  return openItems(db, eq(device.buildingId, buildingId));
}

function openItems(db: Queryable, where: ReturnType<typeof eq>): OpenItem[] {
  const seenAgain = sql`exists (select 1 from ${inspectionItem} later join ${inspection} again on again.id = later.inspection_id
    where again.device_id = ${inspection.deviceId} and later.item_id = ${inspectionItem.itemId}
    and later.outcome in ('pass', 'fail', 'not-applicable')
    and (again.inspected_on, again.id) > (${inspection.inspectedOn}, ${inspection.id}))`;
  return db
    .select({ item: inspectionItem, deviceId: inspection.deviceId, inspectedOn: inspection.inspectedOn })
    .from(inspectionItem)
    .innerJoin(inspection, eq(inspection.id, inspectionItem.inspectionId))
    .innerJoin(device, eq(device.id, inspection.deviceId))
    .where(and(where, eq(inspectionItem.outcome, "fail"), isNull(inspectionItem.correctedOn), sql`not ${seenAgain}`))
    .orderBy(asc(inspection.deviceId), asc(inspectionItem.id))
    .all()
    .map(({ item, ...rest }) => ({ ...item, ...rest }));
}

export function findInspectionItem(db: Queryable, deviceId: number, itemRowId: number): InspectionItemRow | undefined {
  const row = db
    .select({ item: inspectionItem })
    .from(inspectionItem)
    .innerJoin(inspection, eq(inspection.id, inspectionItem.inspectionId))
    .where(and(eq(inspection.deviceId, deviceId), eq(inspectionItem.id, itemRowId)))
    .get();
  return row?.item;
}

export function correctInspectionItem(
  db: Queryable,
  itemRowId: number,
  row: { correctedOn: string; correctedBy: string; correctionNote: string },
): void {
  db.update(inspectionItem).set(row).where(eq(inspectionItem.id, itemRowId)).run();
}
