import type { RowFate } from "@/lib/importers/tables/table-read";
import { counted } from "@/lib/units/counted";

type Told = Exclude<RowFate, { fate: "accepted" }>;

/** Fates worth a line: not those of headings and blank rows. */
export const shownFates = (fates: readonly RowFate[]): Told[] =>
  fates.filter(
    (fate): fate is Told => fate.fate !== "accepted" && !["heading", "before-heading", "blank-row"].includes(fate.code),
  );

export function fatesLede(fates: readonly RowFate[], isTaken: boolean): string {
  if (isTaken) return "This file has been taken.";
  const count = (fate: RowFate["fate"]): number => fates.filter((each) => each.fate === fate).length;
  const ready = count("accepted") + count("repaired");
  return `${counted(ready, "row")} can be taken, ${count("rejected")} cannot as the columns stand; nothing is registered yet.`;
}
