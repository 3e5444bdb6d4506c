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

type Compare = (a: RegisterRow, b: RegisterRow) => number;

/** Places of the values in an order: thousands of rows have few values, and comparing texts as people do is slow. */
function rankOf(rows: readonly RegisterRow[], of: (row: RegisterRow) => string, compare = naturalCompare): Compare {
  const values = [...new Set(rows.map(of))].sort(compare);
  const places = new Map(values.map((value, place) => [value, place]));
  return (a, b) => (places.get(of(a)) ?? 0) - (places.get(of(b)) ?? 0);
}

/** What is not known counts less than anything. */
const byFigure =
  (of: (row: RegisterRow) => number | undefined): Compare =>
  (a, b) =>
    (of(a) ?? -1) - (of(b) ?? -1);

/** Rows come in the order of their label: it needs no comparing, and breaks the ties of every other order. */
const ORDERS: Record<Exclude<RegisterSort, "label">, (rows: readonly RegisterRow[]) => Compare> = {
  zone: (rows) => rankOf(rows, ({ zoneCode }) => zoneCode),
  class: (rows) => rankOf(rows, ({ deviceClass }) => deviceClass),
  power: () => byFigure(({ highPowerW }) => highPowerW),
  energy: () => byFigure(({ energyKwh }) => energyKwh?.value),
  cost: () => byFigure(({ cost }) => cost?.value),
  status: () => byFigure(({ status }) => DEVICE_STATUSES.indexOf(status)),
  found: (rows) => rankOf(rows, ({ foundOn }) => foundOn),
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

/** Rows in the order asked for, groups together. They have to come in the order of their label. */
export function rowsInOrder(rows: readonly RegisterRow[], query: RegisterQuery): RegisterRow[] {
  const ordered = query.descending && query.sort === "label" ? [...rows].reverse() : [...rows];
  if (query.sort !== "label") {
    const compare = ORDERS[query.sort](rows);
    ordered.sort(query.descending ? (a, b) => compare(b, a) : compare);
  }
  return query.group === null ? ordered : ordered.sort(rankOf(rows, groupKey(query.group), compareGroups(query.group)));
}
