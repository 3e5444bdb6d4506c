import { deviceClassById } from "@/lib/electrical/device-classes";
import type { PowerBasis } from "@/lib/electrical/device-kind";
import { type DeviceStatus, statusLabel } from "@/lib/electrical/device-status";
import { conditionLabel } from "@/lib/electrical/inspection/inspection-words";
import type { RegisterPart, RegisterTotals } from "@/lib/services/devices/list/read-register";
import type { RegisterGroup, RegisterQuery, RegisterSort } from "@/lib/services/devices/list/register-query";
import type { RegisterRow } from "@/lib/services/devices/list/register-rows";
import { formatNumber } from "@/lib/units/format";
import { originOf } from "./view-model";

const whole = (value: number): string => formatNumber(value, { decimals: 0 });
const bounded = (isUpperBound: boolean, value: number, text: string): string =>
  isUpperBound && value > 0 ? `\u2264\u2009${text}` : text;

/** Figures of a row or of a total, in words of digits. */
export function rowFigures(row: Pick<RegisterRow, "energyKwh" | "cost" | "isUpperBound">): {
  energyKwh: string;
  cost: string;
} {
  if (!row.energyKwh || !row.cost) return { energyKwh: "not known", cost: "not known" };
  return {
    energyKwh: bounded(row.isUpperBound, row.energyKwh.value, formatNumber(row.energyKwh.value, { decimals: 1 })),
    cost: bounded(row.isUpperBound, row.cost.value, formatNumber(row.cost.value, { decimals: 2 })),
  };
}

const count = (number: number, one: string, many: string): string => `${whole(number)} ${number === 1 ? one : many}`;

/** The page's one sentence: everything that is in the building. */
export function registerLede({ all }: Pick<RegisterPart, "all">): string {
  if (all.devices + all.removed === 0)
    return "Heaters and fans by desk and zone, with what each setting draws and costs.";
  const { value } = all.energyKwh;
  const fans = all.devices - all.heaters;
  const removed = all.removed > 0 ? `; ${whole(all.removed)} removed` : "";
  return `${count(all.heaters, "heater", "heaters")} and ${count(fans, "fan", "fans")} in use, ${bounded(all.isUpperBound, value, whole(value))} kWh a year together${removed}.`;
}

/** How a device stands by its inspections, and whether the next one is overdue. */
export function inspectionWords(
  row: Pick<RegisterRow, "condition" | "nextDueOn" | "retiredOn">,
  today: string,
): string {
  const overdue = row.retiredOn === null && row.nextDueOn !== null && row.nextDueOn < today;
  return `${conditionLabel(row.condition)}${overdue ? ", next overdue" : ""}`;
}

/** What the total in the last line stands for: all that the filter lets through, on every page. */
export function totalSentence({ totals }: Pick<RegisterPart, "totals">): string {
  const unknown =
    totals.unknown > 0 ? ` The energy of ${whole(totals.unknown)} is not known and not in the total.` : "";
  const removed = totals.removed > 0 ? ` ${whole(totals.removed)} removed are shown and not counted.` : "";
  return `The last line adds up ${count(totals.devices, "device", "devices")} in use, on all pages.${unknown}${removed}`;
}

export function groupLabel(group: RegisterGroup, key: string): string {
  if (group === "class") return deviceClassById(key)?.label ?? key;
  if (group === "status") return statusLabel(key as DeviceStatus);
  if (group === "origin") return originOf(key as PowerBasis);
  return key === "" ? "not said" : key;
}

export const groupNoun: Record<RegisterGroup, string> = {
  zone: "Zone",
  floor: "Floor",
  class: "Sort of device",
  status: "Status",
  origin: "Known by",
};

export const shareOf = (part: RegisterTotals, whole: RegisterTotals): string =>
  whole.energyKwh.value === 0
    ? ""
    : formatNumber((100 * part.energyKwh.value) / whole.energyKwh.value, { decimals: 0 });

const FILTERS = [
  ["q", "text"],
  ["zone", "zone"],
  ["floor", "floor"],
  ["class", "deviceClass"],
  ["status", "status"],
  ["origin", "origin"],
  ["condition", "condition"],
  ["group", "group"],
] as const;

/** Address of the register with a query; what says nothing is left out. */
export function registerAddress(path: string, query: RegisterQuery): string {
  const words = new URLSearchParams();
  for (const [name, field] of FILTERS) if (query[field]) words.set(name, String(query[field]));
  if (query.sort !== "label") words.set("sort", query.sort);
  if (query.descending) words.set("order", "down");
  if (query.page > 1) words.set("page", String(query.page));
  const text = words.toString();
  return text === "" ? path : `${path}?${text}`;
}

/** Address that shows one group alone. */
export function groupAddress(path: string, query: RegisterQuery, group: RegisterGroup, key: string): string | null {
  if (key === "") return null;
  const field = group === "class" ? "deviceClass" : group;
  return registerAddress(path, { ...query, [field]: key, group: null, page: 1 });
}

/** Address that orders by a column: down first for figures, and the other way round when it orders already. */
export function sortAddress(path: string, query: RegisterQuery, sort: RegisterSort): string {
  const isFigure = sort === "power" || sort === "energy" || sort === "cost" || sort === "found";
  const descending = query.sort === sort ? !query.descending : isFigure;
  return registerAddress(path, { ...query, sort, descending, page: 1 });
}

/** How a column is ordered now, for those who do not see the arrow. */
export const sortMark = (query: RegisterQuery, sort: RegisterSort): string =>
  query.sort !== sort ? "" : query.descending ? "\u2193" : "\u2191";
