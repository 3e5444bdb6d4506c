import type { CashFlowYear } from "@/lib/finance/cash-flow";
import type { Range80, Working } from "@/lib/working/working";

/** A value in a document; how it is written is the printer's business. Money in major units of the document's currency. */
export type CaseValue =
  | { kind: "text"; text: string }
  | { kind: "money"; amount: number; decimals: "whole" | "minor" }
  | { kind: "money-range"; range: Range80 }
  | { kind: "number"; value: number; decimals: number; unit: string }
  | { kind: "range"; range: Range80; unit: string };

export type CaseColumn = { head: string; align: "text" | "number" };

export type CaseTable = {
  kind: "table";
  id: string;
  caption: string;
  columns: CaseColumn[];
  rows: CaseValue[][];
  total: CaseValue[] | null;
};

export type CaseChart =
  | { kind: "parts"; id: string; caption: string; unit: string; parts: { label: string; value: number }[] }
  | { kind: "cash-flow"; id: string; caption: string; years: CashFlowYear[] }
  | {
      kind: "ranges";
      id: string;
      caption: string;
      unit: string;
      lines: { label: string; range: Range80; strong: boolean }[];
    }
  | {
      kind: "tornado";
      id: string;
      caption: string;
      base: number;
      lines: { label: string; lowTotal: number; highTotal: number }[];
    };

export type CaseBlock =
  | { kind: "paragraph"; runs: (string | CaseValue)[] }
  | { kind: "list"; items: string[] }
  /** Headline figures, each with what it is. */
  | { kind: "figures"; figures: { label: string; value: CaseValue; note: string }[] }
  | CaseTable
  | { kind: "chart"; chart: CaseChart }
  | { kind: "working"; title: string; working: Working }
  | { kind: "heading"; text: string };

export type CaseSection = { id: string; title: string; startsPage: boolean; blocks: CaseBlock[] };

/** A business case as data: no markup, nothing left to work out. */
export type CaseDocument = {
  number: string;
  title: string;
  buildingName: string;
  currency: string;
  timeZone: string;
  issuedAtMs: number;
  issuedBy: string;
  sections: CaseSection[];
};

export const text = (words: string): CaseValue => ({ kind: "text", text: words });
export const money = (amount: number, decimals: "whole" | "minor" = "whole"): CaseValue => ({
  kind: "money",
  amount,
  decimals,
});
export const moneyRange = ({ p10, p50, p90 }: Range80): CaseValue => ({
  kind: "money-range",
  range: { p10, p50, p90 },
});
export const number = (value: number, decimals: number, unit = ""): CaseValue => ({
  kind: "number",
  value,
  decimals,
  unit,
});
export const range = ({ p10, p50, p90 }: Range80, unit: string): CaseValue => ({
  kind: "range",
  range: { p10, p50, p90 },
  unit,
});
