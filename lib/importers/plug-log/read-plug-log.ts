import type { Finding } from "@/lib/findings/finding";
import type { ZoneTable } from "@/lib/time/zone-table";
import { cellNumber } from "../tables/cell-number";
import { decodeText } from "../tables/decode-text";
import { splitTable, type TableRecord } from "../tables/split-table";
import { columnsOfFirstRow, columnsOfHeadings, type PlugColumns } from "./plug-columns";
import { type PlugLogRead, type PlugReadFindingCode, refusePlugLog } from "./plug-log-read";
import { PLUG_UNITS, type PlugLogAnswers, type PlugQuantity } from "./plug-quantity";
import { PlugRows } from "./plug-rows";
import { dateOrderSeen, stampReader } from "./plug-stamps";
import { powerOfRows } from "./power-of-rows";

const DELIMITERS = [";", ",", "\t", "|"];
/** A heading line is looked for in this many records: exports may begin with a title. */
const LONGEST_PREAMBLE = 20;
/** Longest file that is read: a year of one-minute rows, or two weeks at one second. */
export const MOST_PLUG_ROWS = 1_300_000;

type Opened = { records: readonly TableRecord[]; columns: PlugColumns; firstData: number; decimalComma: boolean };

/**
 * Reads a plug logger's file: a stamp and W, kW, A, Wh or kWh a row, with or without headings, any usual delimiter. What
 * the file does not say (unit of a file without headings, order of day and month) is asked, never guessed. Watts of
 * amperes are taken at `voltageV`. Stamps are of the zone's wall clock unless they state an offset.
 */
export function readPlugLog(
  file: { bytes: Uint8Array },
  site: { zone: ZoneTable; voltageV: number },
  answers: PlugLogAnswers,
): PlugLogRead {
  const decoded = decodeText(file.bytes);
  if (decoded.status !== "ok") return refusePlugLog("not-text", decoded.message);
  const opened = openText(decoded.text);
  if ("status" in opened) return opened;
  const { columns, records, firstData } = opened;
  if (records.length - firstData > MOST_PLUG_ROWS) {
    const message = `The file has more than ${MOST_PLUG_ROWS} rows. Bring it in day by day or week by week.`;
    return refusePlugLog("too-long", message);
  }
  const unit = columns.unit ?? answers.unit;
  const known = unit === null ? undefined : PLUG_UNITS[unit];
  if (!unit || !known) {
    const what = columns.valueHeading
      ? `The heading "${columns.valueHeading}" has no unit`
      : "The file has no headings";
    return {
      status: "ask",
      question: "unit",
      message: `${what}, so it does not say whether its numbers are W, A or kWh. Choose the unit and send the file again.`,
    };
  }
  const seen = dateOrderSeen(sampleStamps(opened));
  if (seen.isNumeric && seen.order === null && answers.dateOrder === null) {
    const example = stampText(opened.records[firstData] as TableRecord, columns);
    return {
      status: "ask",
      question: "date-order",
      message: `"${example}" can be read in two ways, and no date of the file tells which. Say whether the day or the month comes first and send the file again.`,
    };
  }
  const rows = readRows(opened, stampReader(seen.order ?? answers.dateOrder), site.zone, known.factor);
  if (rows.count < 2) {
    return refusePlugLog(
      "no-readings",
      `No two rows with a date, a time and a number were found${rows.firstFault ? ` (${rows.firstFault})` : ""}. Export the log as CSV with a stamp and a value a row.`,
    );
  }
  const quantity = quantityOf(known.quantity, rows, answers);
  if (quantity === null) {
    return {
      status: "ask",
      question: "energy",
      message:
        "The energy readings never fall, so they may be a running total or the energy of each step. Say which and send the file again.",
    };
  }
  return resultOf(rows, quantity, unit, columns, site.voltageV, opened);
}

function resultOf(
  rows: PlugRows,
  quantity: PlugQuantity,
  unit: string,
  columns: PlugColumns,
  voltageV: number,
  { records, firstData }: Opened,
): PlugLogRead {
  const power = powerOfRows(rows, quantity, voltageV);
  const further = (records[firstData]?.cells ?? []).slice(columns.valueAt + 1).some((cell) => /\d/.test(cell));
  const findings: Finding<PlugReadFindingCode>[] = [...rows.findings(), ...power.findings];
  if (further) {
    const used = columns.valueHeading || `number ${columns.valueAt + 1}`;
    findings.push({ code: "later-columns-not-used", severity: "note", evidence: { used } });
  }
  return {
    status: "ok",
    tsUtcSeconds: power.tsUtcSeconds,
    powerW: power.powerW,
    quantity,
    unit,
    valueHeading: columns.valueHeading,
    rows: rows.counts(records.length),
    notes: rows.notes,
    findings,
  };
}

/** The delimiter under which a heading line, or a first row of stamp and number, is found earliest. */
function openText(text: string): Opened | PlugLogRead {
  const isStamp = (cell: string): boolean => stampReader("dmy")(cell) !== null || stampReader("mdy")(cell) !== null;
  const head = text.slice(0, 20_000);
  for (const delimiter of DELIMITERS) {
    const start = splitTable(head, delimiter).records.slice(0, LONGEST_PREAMBLE);
    for (const [at, { cells }] of start.entries()) {
      const byName = columnsOfHeadings(cells);
      const columns = byName ?? columnsOfFirstRow(cells, isStamp);
      if (!columns) continue;
      const { records, openQuoteLine } = splitTable(text, delimiter);
      if (openQuoteLine !== null)
        return refusePlugLog(
          "quote-not-closed",
          `The quotation mark in line ${openQuoteLine} is never closed. Export the file again.`,
        );
      return { records, columns, firstData: byName ? at + 1 : at, decimalComma: delimiter !== "," };
    }
  }
  return refusePlugLog(
    "no-columns",
    "No column of times beside a column of numbers was found in the first 20 lines. A plug logger's file has a stamp and W, A or kWh a row.",
  );
}

const stampText = ({ cells }: TableRecord, { stampAt, timeAt }: PlugColumns): string =>
  timeAt === null ? (cells[stampAt] ?? "") : `${cells[stampAt] ?? ""} ${cells[timeAt] ?? ""}`;

function sampleStamps({ records, columns, firstData }: Opened): string[] {
  const step = Math.max(1, Math.floor((records.length - firstData) / 5000));
  const stamps: string[] = [];
  for (let at = firstData; at < records.length; at += step) stamps.push(stampText(records[at] as TableRecord, columns));
  return stamps;
}

function readRows(
  opened: Opened,
  readStamp: ReturnType<typeof stampReader>,
  zone: ZoneTable,
  factor: number,
): PlugRows {
  const { records, columns, firstData, decimalComma } = opened;
  const rows = new PlugRows(records.length - firstData, zone);
  const commaSeen = decimalComma && showsDecimalComma(opened);
  for (let at = firstData; at < records.length; at++) {
    const record = records[at] as TableRecord;
    if (record.cells.every((cell) => cell === "")) {
      rows.ignore(record.line, "blank");
      continue;
    }
    const stamp = readStamp(stampText(record, columns));
    const text = record.cells[columns.valueAt] ?? "";
    const value = /^\d+(\.\d+)?$/.test(text)
      ? Number(text)
      : numberOf(commaSeen ? text.replace(",", ".") : text, decimalComma);
    if (!stamp) rows.reject(record.line, `"${stampText(record, columns)}" is no date and time`);
    else if (value === null) rows.reject(record.line, text === "" ? "the value is blank" : `"${text}" is no number`);
    else rows.add(record.line, stamp, value * factor);
  }
  return rows;
}

/** Whether some value of the column can only be read with the comma as decimal sign: "0,750" or "12,5", not "1,500". */
const showsDecimalComma = ({ records, columns, firstData }: Opened): boolean =>
  records.slice(firstData).some(({ cells }) => /^(0,\d+|\d+,(\d{1,2}|\d{4,}))$/.test(cells[columns.valueAt] ?? ""));

function numberOf(text: string, decimalComma: boolean): number | null {
  const read = cellNumber(text, decimalComma);
  return read.status === "ok" ? read.value : null;
}

function quantityOf(
  kind: "power" | "current" | "energy",
  rows: PlugRows,
  { energy }: PlugLogAnswers,
): PlugQuantity | null {
  if (kind !== "energy") return kind;
  if (energy !== null) return energy === "counter" ? "energy-counter" : "energy-step";
  return rows.valuesFall() ? "energy-step" : null;
}
