import type { AppDatabase } from "@/db/client";
import type { BuildingRow } from "@/db/queries/buildings";
import { listOpenItemsOfBuilding } from "@/db/queries/inspections";
import { changeStamp, listRegister } from "@/db/queries/register";
import type { DeviceFigures } from "@/lib/electrical/device-figures";
import type { DeviceKind, PowerBasis } from "@/lib/electrical/device-kind";
import type { DeviceStatus } from "@/lib/electrical/device-status";
import type { SafetyCondition } from "@/lib/electrical/inspection/inspection-words";
import { safetyCondition } from "@/lib/electrical/inspection/safety-condition";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { Context } from "../../context";
import { groupBy } from "../../group-by";
import { devicePrice } from "../read";
import { keptFigures } from "./kept-figures";

/** A device in a line of the register. */
export type RegisterRow = {
  id: number;
  label: string;
  kind: DeviceKind;
  deviceClass: string;
  zoneId: number;
  zoneCode: string;
  floor: string;
  deskCode: string;
  status: DeviceStatus;
  /** Removed devices are shown and not counted. */
  retiredOn: string | null;
  foundOn: string;
  condition: SafetyCondition;
  nextDueOn: string | null;
  origin: PowerBasis;
  /** What the words of a search are looked for in. */
  searched: string;
} & DeviceFigures;

/** Rows of a building as they were last worked out, by the database that they come from. */
const kept = new WeakMap<AppDatabase, Map<number, { stamp: string; rows: readonly RegisterRow[] }>>();

/**
 * Every device of a building, in the natural order of its label, with its figures at the building's price. Kept until anything is
 * written to the database, by whatever connection: leafing, filtering and ordering read nothing twice.
 */
export function registerRows(ctx: Context, building: BuildingRow): readonly RegisterRow[] {
  const stamp = `${changeStamp(ctx.db)} ${building.electricityPricePerKwh}`;
  const ofDatabase = kept.get(ctx.db) ?? new Map<number, { stamp: string; rows: readonly RegisterRow[] }>();
  kept.set(ctx.db, ofDatabase);
  const before = ofDatabase.get(building.id);
  if (before?.stamp === stamp) return before.rows;
  const rows = readRows(ctx, building);
  ofDatabase.set(building.id, { stamp, rows });
  return rows;
}

function readRows(ctx: Context, building: BuildingRow): RegisterRow[] {
  const open = groupBy(listOpenItemsOfBuilding(ctx.db, building.id), ({ deviceId }) => deviceId);
  const price = devicePrice(building);
  const rows = listRegister(ctx.db, building.id).map((record): RegisterRow => {
    const figures = keptFigures(record, price);
    const deskCode = record.deskCode ?? "";
    return {
      id: record.id,
      label: record.label,
      kind: record.kind,
      deviceClass: record.deviceClass,
      zoneId: record.zoneId,
      zoneCode: record.zoneCode,
      floor: record.floor,
      deskCode,
      status: record.status,
      retiredOn: record.retiredOn,
      foundOn: record.foundOn,
      condition: safetyCondition(open.get(record.id) ?? [], record.inspectedOn !== null),
      nextDueOn: record.nextDueOn,
      searched: `${record.label} ${deskCode} ${record.make} ${record.model}`.toLowerCase(),
      highPowerW: figures.highPowerW,
      energyKwh: figures.energyKwh,
      cost: figures.cost,
      isUpperBound: figures.isUpperBound,
      origin: figures.origin,
    };
  });
  return rows.sort((a, b) => naturalCompare(a.label, b.label));
}
