import type { LocalDate } from "@/lib/time/civil-date";
import { billDay, billMonth, dateOf, dateOrderOf } from "./bill-dates";
import { openTable } from "./read-table";
import { type RowCells, rowCells } from "./row-cells";
import { holdAgainstStored, type PlacedBill, type StoredBill } from "./stored-bills";
import { type RowFate, refuseTable, type TableRead } from "./table-read";

/** A bill: `fromDate` is its first day, `untilDate` the first day that it does not cover. Charges in major units. */
export type BillRow = {
  fromDate: LocalDate;
  untilDate: LocalDate;
  energyKwh: number;
  billedDemandKw: number | null;
  charges: number | null;
};

/** Longest time that one bill covers [days]: a quarter with a late reading. */
const LONGEST_BILL_DAYS = 100;

/** A row on its way: days as numbers, with the end as it was written. */
type Draft = { cells: RowCells; span: Span | null; row: Omit<BillRow, "fromDate" | "untilDate"> };
type Span = { from: number; end: number; endIncluded: boolean };

/**
 * Electricity bills of a CSV file, each with a month (`2025-03`) or its first and last day. Where the next bill begins on
 * the last day of the one before, as bills do that go from meter reading to meter reading, that day is the next one's. `known`
 * are the building's bills: what overlaps them is rejected.
 */
export function readBillsTable(
  file: { bytes: Uint8Array },
  known: { bills: readonly StoredBill[] } = { bills: [] },
): TableRead<BillRow> {
  const table = openTable(file, "bills");
  if (table.status !== "ok") return table;
  const hasMonth = table.columns.has("month");
  if (!hasMonth && !(table.columns.has("from") && table.columns.has("to"))) {
    const message = 'A bills table needs the columns "from" and "to", or "month": without them no bill has its days.';
    return refuseTable("column-missing", message);
  }
  const order = dateOrderOf(
    table.records.flatMap(({ cells }) => ["from", "to"].map((key) => cells[table.columns.get(key)?.at ?? -1] ?? "")),
  );
  const drafts = table.records.map((record): Draft => {
    const cells = rowCells(table, record);
    const energyKwh = cells.number("energyKwh", { low: 0, high: 1e9, unit: "kWh" });
    if (energyKwh === null && !cells.hasFaults()) cells.fault("energy-blank", "the bill has no energy");
    const billedDemandKw = cells.number("billedDemandKw", { low: 0, high: 1e6, unit: "kW" });
    const charges = cells.number("charges", { low: -1e9, high: 1e9, unit: "" });
    const span = hasMonth ? monthOf(cells) : daysOf(cells, order);
    return { cells, span, row: { energyKwh: energyKwh ?? 0, billedDemandKw, charges } };
  });
  const rows = placed(drafts, known.bills);
  const fates: RowFate[] = [...table.fates, ...drafts.map(({ cells }) => cells.fate())];
  fates.sort((a, b) => a.line - b.line);
  const fields = [...table.columns.keys()].filter((key) => !["month", "from", "to"].includes(key));
  return { status: "ok", rows, fates, findings: table.findings, fields: [...fields, "untilDate"] };
}

function monthOf(cells: RowCells): Span | null {
  const text = cells.text("month", 20);
  const month = billMonth(text);
  if (month === null) cells.fault("date-unreadable", `"${text}" is no month; write it as 2025-03`);
  return month && { from: month.from, end: month.until, endIncluded: false };
}

function daysOf(cells: RowCells, order: Parameters<typeof billDay>[1]): Span | null {
  const [from, to] = (["from", "to"] as const).map((key) => billDay(cells.text(key, 20), order)) as [
    ReturnType<typeof billDay>,
    ReturnType<typeof billDay>,
  ];
  for (const each of [from, to]) if ("fault" in each) cells.fault("date-unreadable", each.fault);
  if ("fault" in from || "fault" in to) return null;
  if (to.day <= from.day) {
    cells.fault("days-crossed", "its last day is not after its first");
    return null;
  }
  return { from: from.day, end: to.day, endIncluded: true };
}

/** Bills with their days settled, in the order of time; a bill that overlaps the one before is a fault. */
function placed(drafts: readonly Draft[], stored: readonly StoredBill[]): { line: number; row: BillRow }[] {
  const dated = drafts.flatMap(({ cells, span, row }) => (span && !cells.hasFaults() ? [{ cells, span, row }] : []));
  dated.sort((a, b) => a.span.from - b.span.from || a.cells.line - b.cells.line);
  const fromReadings = dated.some((each, i) => each.span.endIncluded && dated[i + 1]?.span.from === each.span.end);
  let covered: { until: number; line: number } | null = null;
  const found: (PlacedBill & Pick<Draft, "row">)[] = [];
  for (const { cells, span, row } of dated) {
    const until = span.endIncluded && !fromReadings ? span.end + 1 : span.end;
    if (until - span.from > LONGEST_BILL_DAYS)
      cells.fault("bill-too-long", `it covers ${until - span.from} days; at most ${LONGEST_BILL_DAYS} are one bill`);
    else if (covered && span.from < covered.until)
      cells.fault("bills-overlap", `its days overlap those of the bill in line ${covered.line}`);
    if (cells.hasFaults()) continue;
    covered = { until, line: cells.line };
    found.push({ cells, from: span.from, until, row });
  }
  holdAgainstStored(found, stored);
  return found
    .filter(({ cells }) => !cells.hasFaults())
    .map(({ cells, from, until, row }) => ({
      line: cells.line,
      row: { fromDate: dateOf(from), untilDate: dateOf(until), ...row },
    }));
}
