import { POWER_BASES } from "@/lib/electrical/device-kind";
import { DEVICE_STATUSES } from "@/lib/electrical/device-status";
import { SAFETY_CONDITIONS } from "@/lib/electrical/inspection/inspection-words";

/** What a register can be grouped by. */
export const REGISTER_GROUPS = ["zone", "floor", "class", "status", "origin"] as const;
export type RegisterGroup = (typeof REGISTER_GROUPS)[number];

export const REGISTER_SORTS = ["label", "zone", "class", "power", "energy", "cost", "status", "found"] as const;
export type RegisterSort = (typeof REGISTER_SORTS)[number];

/** What a register shows, in what order. Empty filters let everything through. */
export type RegisterQuery = {
  /** Words that label, desk, make or model contain. */
  text: string;
  zone: string;
  floor: string;
  deviceClass: string;
  /** A status, or "" for what is in the building, or "all". */
  status: string;
  origin: string;
  condition: string;
  group: RegisterGroup | null;
  sort: RegisterSort;
  descending: boolean;
  page: number;
};

/** A query from words of an address; what means nothing is left out. */
export function registerQuery(words: Readonly<Record<string, string | undefined>>): RegisterQuery {
  const known = <T extends string>(list: readonly T[], word: string | undefined): T | undefined =>
    list.find((each) => each === word);
  return {
    text: (words.q ?? "").trim().slice(0, 100),
    zone: words.zone ?? "",
    floor: words.floor ?? "",
    deviceClass: words.class ?? "",
    status: words.status === "all" ? "all" : (known(DEVICE_STATUSES, words.status) ?? ""),
    origin: known(POWER_BASES, words.origin) ?? "",
    condition: known(SAFETY_CONDITIONS, words.condition) ?? "",
    group: known(REGISTER_GROUPS, words.group) ?? null,
    sort: known(REGISTER_SORTS, words.sort) ?? "label",
    descending: words.order === "down",
    page: Math.max(1, Math.floor(Number(words.page)) || 1),
  };
}
