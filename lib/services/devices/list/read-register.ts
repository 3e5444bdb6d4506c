import { deviceClassById } from "@/lib/electrical/device-classes";
import { type CountedClass, registerWorkings } from "@/lib/electrical/register-working";
import { summedRange, type ValueRange } from "@/lib/electrical/value-range";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { Working } from "@/lib/working/working";
import { requireFacilities } from "../../authorise";
import { findBuildingOrRefuse } from "../../buildings/find";
import type { Context } from "../../context";
import { groupBy } from "../../group-by";
import { devicePrice } from "../read";
import { compareGroups, groupKey, rowsInOrder, rowsShown } from "./arrange";
import type { RegisterQuery } from "./register-query";
import { type RegisterRow, registerRows } from "./register-rows";

/** What a set of devices adds up to; removed ones are not counted. */
export type RegisterTotals = {
  devices: number;
  heaters: number;
  removed: number;
  energyKwh: ValueRange;
  cost: ValueRange;
  isUpperBound: boolean;
  /** Devices in the building whose energy is not known, and so not in the total. */
  unknown: number;
};

export type RegisterPart = {
  /** The rows of this page. */
  rows: RegisterRow[];
  count: number;
  page: number;
  pages: number;
  first: number;
  totals: RegisterTotals;
  groups: { key: string; totals: RegisterTotals }[];
  workings: { energy: Working; cost: Working };
  /** Everything on the register, whatever is shown. */
  all: RegisterTotals;
  choices: { zones: string[]; floors: string[]; classes: string[] };
};

export const ROWS_A_PAGE = 100;

/** A page of the register, with totals of all that the query lets through. */
export function readRegister(ctx: Context, buildingId: number, query: RegisterQuery): RegisterPart {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const all = registerRows(ctx, building);
  const shown = rowsInOrder(rowsShown(all, query), query);
  const pages = Math.max(1, Math.ceil(shown.length / ROWS_A_PAGE));
  const page = Math.min(query.page, pages);
  const rows = shown.slice((page - 1) * ROWS_A_PAGE, page * ROWS_A_PAGE);
  const distinct = (of: (row: RegisterRow) => string): string[] =>
    [...new Set(all.map(of))].filter(Boolean).sort(naturalCompare);
  return {
    rows,
    count: shown.length,
    page,
    pages,
    first: (page - 1) * ROWS_A_PAGE + 1,
    totals: totalsOf(shown),
    groups: groupsOf(shown, query),
    workings: registerWorkings(countedClasses(shown), devicePrice(building)),
    all: totalsOf(all),
    choices: {
      zones: distinct(({ zoneCode }) => zoneCode),
      floors: distinct(({ floor }) => floor),
      classes: distinct(({ deviceClass }) => deviceClass),
    },
  };
}

function groupsOf(rows: readonly RegisterRow[], { group }: RegisterQuery): RegisterPart["groups"] {
  if (group === null) return [];
  const compare = compareGroups(group);
  return [...groupBy(rows, groupKey(group))]
    .sort(([a], [b]) => compare(a, b))
    .map(([key, members]) => ({ key, totals: totalsOf(members) }));
}

function totalsOf(rows: readonly RegisterRow[]): RegisterTotals {
  const totals: RegisterTotals = {
    devices: 0,
    heaters: 0,
    removed: 0,
    energyKwh: { value: 0, low: 0, high: 0 },
    cost: { value: 0, low: 0, high: 0 },
    isUpperBound: false,
    unknown: 0,
  };
  for (const row of rows) {
    if (row.retiredOn !== null) {
      totals.removed++;
      continue;
    }
    totals.devices++;
    if (row.kind === "space-heater") totals.heaters++;
    if (row.isUpperBound) totals.isUpperBound = true;
    if (row.energyKwh === null || row.cost === null) totals.unknown++;
    else {
      addTo(totals.energyKwh, row.energyKwh);
      addTo(totals.cost, row.cost);
    }
  }
  return totals;
}

/** Ranges of many devices are added end to end, as if all erred together. */
function addTo(sum: ValueRange, { value, low, high }: ValueRange): void {
  sum.value += value;
  sum.low += low;
  sum.high += high;
}

function countedClasses(rows: readonly RegisterRow[]): CountedClass[] {
  const present = rows.filter(({ retiredOn, energyKwh }) => retiredOn === null && energyKwh !== null);
  return [...groupBy(present, ({ deviceClass }) => deviceClass)].map(([id, members]) => ({
    label: deviceClassById(id)?.label ?? id,
    devices: members.length,
    energyKwh: summedRange(members.flatMap(({ energyKwh }) => energyKwh ?? [])),
  }));
}
