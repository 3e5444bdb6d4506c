import type { DayType } from "./meter-model";

/** What a type of day is called: as a heading, and in "saving over ...". */
export const DAY_TYPE_WORDS: Record<DayType, { name: string; over: string }> = {
  "occupied-days": { name: "Occupied days", over: "over occupied days" },
  "other-days": { name: "Other days", over: "over days that are not occupied" },
  bills: { name: "Bills", over: "over all days" },
};
