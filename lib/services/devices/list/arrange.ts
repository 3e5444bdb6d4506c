import { POWER_BASES } from "@/lib/electrical/device-kind";
import { DEVICE_STATUSES } from "@/lib/electrical/device-status";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { RegisterGroup, RegisterQuery, RegisterSort } from "./register-query";
import type { RegisterRow } from "./register-rows";

/** Rows that a query lets through. */
export function rowsShown(rows: readonly RegisterRow[], query: RegisterQuery): RegisterRow[] {
  const words = query.text.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter(
    (row) =>
      hasStatus(row, query.status) &&
      (query.zone === "" || row.zoneCode === query.zone) &&
      (query.floor === "" || row.floor === query.floor) &&
      (query.deviceClass === "" || row.deviceClass === query.deviceClass) &&
      (query.origin === "" || row.origin === query.origin) &&
      (query.condition === "" || row.condition === query.condition) &&
      words.every((word) => row.searched.includes(word)),
  );
}

const hasStatus = (row: RegisterRow, status: string): boolean =>
  status === "" ? row.retiredOn === null : status === "all" || row.status === status;

const byText =
  (of: (row: RegisterRow) => string) =>
  (a: RegisterRow, b: RegisterRow): number =>
    naturalCompare(of(a), of(b));

/** What is not known stands last, whichever way the rest is ordered. */
const byFigure =
  (of: (row: RegisterRow) => number | undefined) =>
  (a: RegisterRow, b: RegisterRow): number =>
    (of(a) ?? -1) - (of(b) ?? -1);

const ORDERS: Record<RegisterSort, (a: RegisterRow, b: RegisterRow) => number> = {
  label: byText(({ label }) => label),
  zone: byText(({ zoneCode }) => zoneCode),
  class: byText(({ deviceClass }) => deviceClass),
  power: byFigure(({ highPowerW }) => highPowerW),
  energy: byFigure(({ energyKwh }) => energyKwh?.value),
  cost: byFigure(({ cost }) => cost?.value),
  status: byFigure(({ status }) => DEVICE_STATUSES.indexOf(status)),
  found: (a, b) => (a.foundOn < b.foundOn ? -1 : a.foundOn > b.foundOn ? 1 : 0),
};

const GROUP_KEYS: Record<RegisterGroup, (row: RegisterRow) => string> = {
  zone: ({ zoneCode }) => zoneCode,
  floor: ({ floor }) => floor,
  class: ({ deviceClass }) => deviceClass,
  status: ({ status }) => status,
  origin: ({ origin }) => origin,
};
export const groupKey = (group: RegisterGroup): ((row: RegisterRow) => string) => GROUP_KEYS[group];

/** Groups in the order of their kind: steps of a life and origins as they follow, everything else by name. */
export function compareGroups(group: RegisterGroup): (a: string, b: string) => number {
  const order: readonly string[] | null =
    group === "status" ? DEVICE_STATUSES : group === "origin" ? POWER_BASES : null;
  return order ? (a, b) => order.indexOf(a) - order.indexOf(b) : naturalCompare;
}

/** Rows in the order asked for, groups together. Rows come in the order of their label, which breaks ties. */
export function rowsInOrder(rows: readonly RegisterRow[], query: RegisterQuery): RegisterRow[] {
  const compare = ORDERS[query.sort];
  const directed = query.descending ? (a: RegisterRow, b: RegisterRow) => compare(b, a) : compare;
  const plain = query.sort === "label" && !query.descending && query.group === null;
  if (plain) return [...rows];
  if (query.group === null) return [...rows].sort(directed);
  const keyOf = groupKey(query.group);
  const compareKeys = compareGroups(query.group);
  return [...rows].sort((a, b) => compareKeys(keyOf(a), keyOf(b)) || directed(a, b));
}
