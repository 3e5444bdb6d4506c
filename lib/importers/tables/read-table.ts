import { type ColumnMatch, type ColumnSpec, knownUnits, matchHeading } from "./columns";
import { decodeText } from "./decode-text";
import { excerptOf } from "./row-cells";
import { splitTable, type TableRecord } from "./split-table";
import { TABLE_COLUMNS } from "./table-columns";
import { type RowFate, refuseTable, type TableFinding, type TableKind, type TableRefusal } from "./table-read";
import { refuseOtherKind } from "./wrong-file";

const DELIMITERS = [",", ";", "\t", "|"] as const;
/** A heading line is looked for in this many records: exports may begin with a title. */
const LONGEST_PREAMBLE = 10;

export type TableColumn = { spec: ColumnSpec; at: number; factor: number; heading: string };

export type OpenedTable = {
  status: "ok";
  columns: ReadonlyMap<string, TableColumn>;
  /** Records that hold data; the fates of all others are below. */
  records: readonly TableRecord[];
  fates: RowFate[];
  findings: TableFinding[];
  /** In a file split by semicolons a comma is the decimal sign. */
  decimalComma: boolean;
};

type Candidate = {
  delimiter: string;
  records: readonly TableRecord[];
  openQuoteLine: number | null;
  headingAt: number;
  matches: ColumnMatch[];
};

/** Opens a CSV file as one of the tables: encoding, delimiter, heading line and columns; or says why it cannot. */
export function openTable(file: { bytes: Uint8Array }, kind: TableKind): OpenedTable | TableRefusal {
  const decoded = decodeText(file.bytes);
  if (decoded.status !== "ok") return refuseTable("not-text", decoded.message);
  const wrong = refuseOtherKind(decoded.text, kind);
  if (wrong) return wrong;
  const found = bestCandidate(decoded.text, kind);
  if ("status" in found) return found;
  const columns = columnsOf(found, kind);
  if ("status" in columns) return columns;
  const heading = found.records[found.headingAt];
  const width = heading?.cells.length ?? 0;
  const sorted = sortRecords(found, width);
  const refusal = sorted.records.length === 0 ? refuseNoRows(kind, sorted.fates) : null;
  if (refusal) return refusal;

  const findings: TableFinding[] = [];
  const unused = (heading?.cells ?? []).filter((cell, at) => cell !== "" && found.matches[at]?.status === "none");
  if (unused.length > 0) {
    findings.push({ code: "columns-not-used", severity: "note", evidence: { columns: unused } });
  }
  if (decoded.encoding === "windows-1252")
    findings.push({ code: "read-as-windows-1252", severity: "note", evidence: {} });
  return { status: "ok", columns, ...sorted, findings, decimalComma: found.delimiter === ";" };
}

/** The delimiter and heading line under which most columns are recognised. */
function bestCandidate(text: string, kind: TableKind): Candidate | TableRefusal {
  let best: { score: number; candidate: Candidate } | null = null;
  for (const delimiter of DELIMITERS) {
    const split = splitTable(text, delimiter);
    for (const [headingAt, record] of split.records.slice(0, LONGEST_PREAMBLE).entries()) {
      if (isComment(record)) continue;
      const matches = record.cells.map((cell) => matchHeading(cell, TABLE_COLUMNS[kind]));
      const score = matches.filter((match) => match.status !== "none").length * 100 + record.cells.length;
      const candidate = { delimiter, ...split, headingAt, matches };
      if (!best || score > best.score) best = { score, candidate };
    }
  }
  const openQuoteLine = best?.candidate.openQuoteLine ?? null;
  if (openQuoteLine !== null) {
    const message = `A quotation mark in the row that starts in line ${openQuoteLine} is never closed. Close it or take it out.`;
    return refuseTable("quote-not-closed", message, [openQuoteLine]);
  }
  if (best) return best.candidate;
  return refuseTable("empty-file", `The file holds no heading line. Start from the template of the ${kind} table.`);
}

function columnsOf(found: Candidate, kind: TableKind): Map<string, TableColumn> | TableRefusal {
  const heading = found.records[found.headingAt];
  const line = heading?.line ?? 1;
  const cells = heading?.cells ?? [];
  const otherTable = refuseOtherTable(cells, kind, line);
  if (otherTable) return otherTable;
  const columns = new Map<string, TableColumn>();
  for (const [at, match] of found.matches.entries()) {
    const name = cells[at] ?? "";
    const refusal = match.status === "unit-missing" && !hasValues(found, at) ? null : refuseUnit(match, name, line);
    if (refusal) return refusal;
    if (match.status !== "matched") continue;
    const other = columns.get(match.spec.key);
    if (other) {
      const message = `The columns "${other.heading}" and "${name}" mean the same. Keep one of them.`;
      return refuseTable("column-twice", message, [line]);
    }
    columns.set(match.spec.key, { spec: match.spec, at, factor: match.factor, heading: name });
  }
  return refuseMissing(columns, cells, kind, line) ?? columns;
}

const hasValues = (found: Candidate, at: number): boolean =>
  found.records.some(
    (record, index) => index > found.headingAt && !isComment(record) && (record.cells[at] ?? "") !== "",
  );

function refuseUnit(match: ColumnMatch, heading: string, line: number): TableRefusal | null {
  if (match.status !== "unit-missing" && match.status !== "unit-unknown") return null;
  const units = knownUnits(match.spec);
  const example = `"${match.spec.names[0]} (${units.split(", ")[0]})"`;
  const message =
    match.status === "unit-missing"
      ? `The column "${heading}" does not say its unit. Write it in the heading, for example ${example}; known units: ${units}.`
      : `The unit in the heading "${heading}" is not known here. Known units: ${units}.`;
  return refuseTable(match.status, message, [line]);
}

/** A more specific table has the columns of a plainer one too: a list of desks also has zones. */
function refuseOtherTable(cells: readonly string[], kind: TableKind, line: number): TableRefusal | null {
  const order: readonly TableKind[] = ["devices", "desks", "zones", "bills"];
  for (const other of order.slice(0, order.indexOf(kind))) {
    const required = TABLE_COLUMNS[other].filter((spec) => spec.required);
    const present = required.filter((spec) => cells.some((cell) => matchHeading(cell, [spec]).status === "matched"));
    if (present.length < required.length) continue;
    return refuseTable(
      "wrong-table",
      `These are the columns of a ${other} table, not of ${kind}. Bring it in as ${other}.`,
      [line],
    );
  }
  return null;
}

function refuseMissing(
  columns: ReadonlyMap<string, TableColumn>,
  cells: readonly string[],
  kind: TableKind,
  line: number,
): TableRefusal | null {
  const missing = TABLE_COLUMNS[kind].filter((spec) => spec.required && !columns.has(spec.key));
  if (missing.length === 0) return null;
  const names = missing.map((spec) => `"${spec.names[0]}"`).join(", ");
  const found = cells.filter((cell) => cell !== "").join(", ");
  return refuseTable(
    "column-missing",
    `A ${kind} table needs the ${missing.length === 1 ? "column" : "columns"} ${names}. Columns found in line ${line}: ${found || "none"}.`,
    [line],
  );
}

const isComment = (record: TableRecord): boolean => (record.cells[0] ?? "").startsWith("#");

function sortRecords({ records, headingAt }: Candidate, width: number): { records: TableRecord[]; fates: RowFate[] } {
  const data: TableRecord[] = [];
  const fates: RowFate[] = [];
  for (const [at, record] of records.entries()) {
    if (at === headingAt) continue;
    const { line, cells } = record;
    const unused = (fate: "ignored" | "rejected", code: string, why: string) =>
      fates.push({ line, fate, code, message: `Line ${line}: ${why}.`, excerpt: excerptOf(cells) });
    if (cells.every((cell) => cell === "")) unused("ignored", "blank-row", "blank");
    else if (isComment(record)) unused("ignored", "comment", "begins with # and was left out");
    else if (at < headingAt) unused("ignored", "before-heading", "stands before the heading line and was left out");
    else if (cells.slice(width).some((cell) => cell !== "")) {
      unused(
        "rejected",
        "extra-cells",
        `${cells.length} cells under ${width} headings; put a text with a comma in quotation marks`,
      );
    } else data.push(record);
  }
  return { records: data, fates };
}

/** Rows that were rejected are reported as such; only a file without any row of its own is refused. */
function refuseNoRows(kind: TableKind, fates: readonly RowFate[]): TableRefusal | null {
  if (fates.some((fate) => fate.fate === "rejected")) return null;
  if (fates.some((fate) => fate.fate === "ignored" && fate.code === "comment")) {
    return refuseTable(
      "only-examples",
      `The file holds only lines that begin with #, such as the examples of the template. Write your ${kind} below them, without #.`,
    );
  }
  return refuseTable("no-rows", `The file has a heading line but no ${kind} below it.`);
}
