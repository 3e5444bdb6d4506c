import { dayNumberFromLocalDate, type LocalDate } from "@/lib/time/civil-date";
import { dateOf } from "./bill-dates";
import type { RowCells } from "./row-cells";

/** A bill that the building has already; `untilDate` is the first day that it does not cover. */
export type StoredBill = { fromDate: LocalDate; untilDate: LocalDate; energyKwh: number };

/** A bill of the file with its days settled. */
export type PlacedBill = { cells: RowCells; from: number; until: number };

type Days = { from: number; until: number; bill: StoredBill };

/**
 * Holds the bills of a file against those of other files: a bill with the first day of a stored one replaces it, one that
 * covers days of any other is a fault, since its energy would count twice. A single day that both have is the next bill's, as
 * within a file (bills that go from meter reading to meter reading): the earlier one then ends before it. A bill that is
 * faulted replaces nothing, so that the stored one stands again, for the others too.
 */
export function holdAgainstStored(placed: readonly PlacedBill[], stored: readonly StoredBill[]): void {
  const days = stored.map((bill): Days => ({ from: dayOf(bill.fromDate), until: dayOf(bill.untilDate), bill }));
  for (let changed = true; changed; ) {
    changed = false;
    const replaced = new Set(placed.filter(({ cells }) => !cells.hasFaults()).map(({ from }) => from));
    const standing = days.filter(({ from }) => !replaced.has(from));
    for (const each of placed) {
      if (each.cells.hasFaults()) continue;
      const other = standing.find((known) => sharedDays(each, known) > (isNextTo(each, known) ? 1 : 0));
      if (!other) continue;
      each.cells.fault("bill-overlaps-stored", sentence(other));
      changed = true;
    }
  }
  for (const each of placed) {
    if (each.cells.hasFaults()) continue;
    const next = days.find((known) => known.from === each.until - 1 && known.from > each.from);
    if (next) {
      each.until = next.from;
      each.cells.repair(
        "bill-day-shared",
        `its last day is the first of the bill of ${next.bill.fromDate}, and counts there`,
      );
    }
    const before = days.find((known) => known.until - 1 === each.from && known.from < each.from);
    if (before)
      each.cells.repair(
        "bill-day-shared",
        `its first day was the last of the bill of ${before.bill.fromDate}, and counts here`,
      );
  }
}

/** Bills that follow each other may share the day of a meter reading. */
const isNextTo = (a: { from: number; until: number }, b: { from: number; until: number }): boolean =>
  a.until - 1 === b.from || b.until - 1 === a.from;

const sharedDays = (a: { from: number; until: number }, b: { from: number; until: number }): number =>
  Math.min(a.until, b.until) - Math.max(a.from, b.from);

function sentence({ from, until, bill }: Days): string {
  const days = `${bill.fromDate} to ${dateOf(until - 1)}`;
  return `its days overlap those of the bill of ${days} (${Math.round(bill.energyKwh)} kWh, ${until - from} days) that is here already, and nothing may count twice: correct the days here, or remove that bill on the energy meter page and bring the file in again`;
}

function dayOf(date: LocalDate): number {
  const day = dayNumberFromLocalDate(date);
  if (day === null) throw new RangeError(`"${date}" is no date`);
  return day;
}
