import { listElectricityBills } from "@/db/queries/electricity-bills";
import { listPoints, type PointRow } from "@/db/queries/points";
import { METER_KINDS, type MeterKind } from "@/lib/trends/point-kind";
import type { Context } from "../context";

/** A meter of the whole building: a trended point, or the bills. Its key names it in an address. */
export type Meter =
  | { key: string; name: string; source: "point"; point: PointRow & { kind: MeterKind } }
  | { key: "bills"; name: string; source: "bills"; bills: number };

const isMeterPoint = (point: PointRow): point is PointRow & { kind: MeterKind } =>
  (METER_KINDS as readonly string[]).includes(point.kind);

/** A building's meters: trended points by name, then the bills where there are any. */
export function metersOf(ctx: Context, buildingId: number): Meter[] {
  const points = listPoints(ctx.db, buildingId)
    .filter(isMeterPoint)
    .map((point): Meter => ({ key: String(point.id), name: point.externalName, source: "point", point }));
  const bills = listElectricityBills(ctx.db, buildingId).length;
  return bills > 0 ? [...points, { key: "bills", name: "Electricity bills", source: "bills", bills }] : points;
}
