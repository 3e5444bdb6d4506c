import { createHash } from "node:crypto";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import type { FileShape } from "./profile-content";

/** The shape of a file as it was found, without its headings. */
export function shapeOf({ detected }: Pick<TrendInspection, "detected">): FileShape {
  return {
    layout: detected.layout ?? null,
    delimiter: detected.delimiter ?? null,
    dateFormat: detected.dateOrder ?? null,
  };
}

/**
 * What makes files come from one source, as a mark: layout and headings. Files of one point each have a heading of their own
 * each, so theirs are taken together by their shape alone.
 */
export function sourceKey(inspection: TrendInspection): string {
  const { layout, delimiter } = shapeOf(inspection);
  const headings = isOnePoint(layout) ? [] : inspection.points.map(({ name, unitAsWritten }) => [name, unitAsWritten]);
  const text = JSON.stringify([layout, delimiter, headings]);
  return createHash("sha256").update(text).digest("hex").slice(0, 16);
}

export const isOnePoint = (layout: string | null): boolean => layout === "one-point";

/** A file name less its dates, counts and ending, as a name for the source: `trend_2026-07.csv` gives `trend`. */
export function proposeProfileName(fileName: string): string {
  const stem = fileName.replace(/\.[a-z0-9]{1,4}$/i, "");
  const named = stem
    .replace(/\d{4}[-_. ]?\d{2}([-_. ]?\d{2})?/g, " ")
    .replace(/\b(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b/gi, " ")
    .replace(/\(\d+\)/g, " ")
    .replace(/[-_. ]+$/g, "")
    .replace(/^[-_. ]+/g, "")
    .replace(/ {2,}/g, " ")
    .trim();
  return named === "" ? stem : named;
}
