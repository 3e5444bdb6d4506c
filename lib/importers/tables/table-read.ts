import type { Finding } from "@/lib/findings/finding";

export type TableKind = "zones" | "desks" | "devices" | "bills";

/** What became of a row. The message is a whole sentence that begins with the line. */
export type RowFate =
  | { line: number; fate: "accepted" }
  | {
      line: number;
      fate: "repaired" | "held-back" | "rejected" | "ignored";
      code: string;
      message: string;
      excerpt: string;
    };

export type TableFinding = Finding<"columns-not-used" | "read-as-windows-1252">;

export type TableRefusalCode =
  | "not-text"
  | "empty-file"
  | "looks-like-trends"
  | "looks-like-weather"
  | "wrong-table"
  | "column-missing"
  | "column-twice"
  | "unit-missing"
  | "unit-unknown"
  | "quote-not-closed"
  | "only-examples"
  | "no-rows";

export type TableRefusal = {
  status: "refused";
  code: TableRefusalCode;
  message: string;
  lines: readonly number[];
};

/** Rows taken (each by the line it starts on), the fate of every row of the file, and findings about the file. */
export type TableRead<Row> =
  | {
      status: "ok";
      rows: readonly { line: number; row: Row }[];
      fates: readonly RowFate[];
      findings: readonly TableFinding[];
      /** Fields of the row for which the file has a column: only these may replace what is known already. */
      fields: readonly string[];
    }
  | TableRefusal;

export function refuseTable(code: TableRefusalCode, message: string, lines: readonly number[] = []): TableRefusal {
  return { status: "refused", code, message, lines };
}

export function tableFindingText({ code, evidence }: TableFinding): string {
  if (code === "read-as-windows-1252") {
    return "The file is not UTF-8 and was read as windows-1252; check names with accents.";
  }
  const columns = Array.isArray(evidence.columns) ? evidence.columns.join(", ") : "";
  return `Columns that have no place here were left out: ${columns}.`;
}
