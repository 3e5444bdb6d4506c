import { normalHeading } from "../tables/columns";
import { PLUG_UNITS } from "./plug-quantity";

const TIME_WORDS = /^(date ?\/?( and)? ?time|date|time|time ?stamp|stamp|local time|recorded at)\b/;
const TIME_OF_DAY = /^(time|time of day|clock)$/;
const VALUE_WORDS =
  /^(active power|real power|mean power|power|watts?|load|current|amps?|amperes?|energy|consumption|kwh|wh|kw|w|a|ma|value)\b/;
/** Columns beside the one that is wanted: another quantity of the same load. */
const OTHER_WORDS = /(factor|reactive|apparent|\bva\b|\bvar\b|cost|price|max|min|peak|voltage|frequency|temp)/;

export type PlugColumns = {
  /** Column of the stamp, or of its date when the time of day stands in a column of its own. */
  stampAt: number;
  timeAt: number | null;
  valueAt: number;
  /** Heading of the value column, "" in a file without headings. */
  valueHeading: string;
  /** Unit as the heading says it, a key of `PLUG_UNITS`; null when it does not. */
  unit: string | null;
};

/** The unit that a heading names: in brackets, after a space or an underscore, or as the heading itself. */
export function unitOfHeading(heading: string): string | null {
  const words = normalHeading(heading).split(" ");
  for (const word of [...words].reverse()) if (Object.hasOwn(PLUG_UNITS, word)) return word;
  return null;
}

/** Which columns of a heading line are stamp and value, or null when it is no heading line of a plug log. */
export function columnsOfHeadings(cells: readonly string[]): PlugColumns | null {
  const headings = cells.map(normalHeading);
  const stampAt = headings.findIndex((heading) => TIME_WORDS.test(heading));
  if (stampAt < 0) return null;
  const timeAt = headings.findIndex((heading, at) => at !== stampAt && TIME_OF_DAY.test(heading));
  const values = headings.flatMap((heading, at) =>
    at !== stampAt && at !== timeAt && VALUE_WORDS.test(heading) && !OTHER_WORDS.test(heading) ? [at] : [],
  );
  // Power first: a logger's file often has the running energy beside it.
  const rank = (at: number): number => {
    const quantity = PLUG_UNITS[unitOfHeading(cells[at] ?? "") ?? ""]?.quantity;
    return quantity === "power" ? 0 : quantity === "energy" ? 1 : quantity === "current" ? 2 : 3;
  };
  const [valueAt] = values.sort((a, b) => rank(a) - rank(b) || a - b);
  if (valueAt === undefined) return null;
  const valueHeading = cells[valueAt] ?? "";
  return {
    stampAt,
    timeAt: timeAt < 0 || normalHeading(cells[stampAt] ?? "") !== "date" ? null : timeAt,
    valueAt,
    valueHeading,
    unit: unitOfHeading(valueHeading),
  };
}

/** Columns of a file without headings: stamp first, or date and time, then the first number. */
export function columnsOfFirstRow(cells: readonly string[], isStamp: (text: string) => boolean): PlugColumns | null {
  const bare = { valueHeading: "", unit: null };
  if (isStamp(cells[0] ?? "")) return cells.length > 1 ? { stampAt: 0, timeAt: null, valueAt: 1, ...bare } : null;
  if (cells.length > 2 && isStamp(`${cells[0]} ${cells[1]}`)) return { stampAt: 0, timeAt: 1, valueAt: 2, ...bare };
  return null;
}
