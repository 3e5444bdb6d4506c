import { normalHeading } from "../tables/columns";

export const COMPLAINT_FIELDS = ["date", "time", "zone", "desk", "text"] as const;
export type ComplaintField = (typeof COMPLAINT_FIELDS)[number];

/** Place of each field's column in the table, from 0; null or absent where the table has none. */
export type ComplaintColumns = Partial<Record<ComplaintField, number | null>>;

const HEADINGS: readonly [ComplaintField, RegExp][] = [
  ["desk", /^(desk|workstation|seat|workplace)( code| id| no| number)?$/],
  ["zone", /^(hvac )?(zone|area|space)( code| id| no)?$/],
  ["time", /^time( reported| received| opened)?$/],
  [
    "date",
    /^(date|day|when|timestamp|date time|datetime)\b|^(reported|received|opened|created|logged)( on| at| date)?$/,
  ],
  ["text", /^(text|description|complaint|comment|comments|problem|issue|summary|subject|details?|note|notes|request)$/],
];

/** Columns by their headings; a column is taken by one field only. */
export function proposeColumns(headings: readonly string[]): ComplaintColumns {
  const columns: ComplaintColumns = {};
  const taken = new Set<number>();
  for (const [field, pattern] of HEADINGS) {
    const at = headings.findIndex((heading, i) => !taken.has(i) && pattern.test(normalHeading(heading)));
    if (at < 0) continue;
    columns[field] = at;
    taken.add(at);
  }
  return columns;
}
