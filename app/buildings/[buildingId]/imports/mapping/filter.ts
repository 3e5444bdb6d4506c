import type { StatedLine } from "@/lib/services/trend-imports/mapping";
import { isSettled } from "@/lib/services/trend-imports/mapping-entry";

/** What the mapping page shows; it travels in the address. */
export type MappingFilter = { text: string; show: "all" | "open" | "settled"; what: string; page: number };

const SHOWS: readonly MappingFilter["show"][] = ["all", "open", "settled"];

/** `byProfile`: a profile has answered most, so that only what is open is shown unless asked otherwise. */
export function filterFrom(query: Readonly<Record<string, string | undefined>>, byProfile: boolean): MappingFilter {
  const show = SHOWS.find((each) => each === query.show) ?? (byProfile ? "open" : "all");
  return { text: query.q ?? "", show, what: query.what ?? "", page: Math.max(1, Math.floor(Number(query.page)) || 1) };
}

export function filterQuery({ text, show, what, page }: MappingFilter): string {
  const query = new URLSearchParams({ show });
  if (text !== "") query.set("q", text);
  if (what !== "") query.set("what", what);
  if (page > 1) query.set("page", String(page));
  return `?${query}`;
}

/** Lines that a filter shows, on all of its pages. Words are looked for in the point's name, in any order. */
export function linesShown<Line extends Pick<StatedLine, "name" | "state">>(
  lines: readonly Line[],
  { text, show, what }: MappingFilter,
): Line[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  return lines.filter(({ name, state }) => {
    if (show !== "all" && isSettled(state) !== (show === "settled")) return false;
    if (what !== "" && state.entry.what !== (what === "none" ? "" : what)) return false;
    const lower = name.toLowerCase();
    return words.every((word) => lower.includes(word));
  });
}

/** Rows on one page: fewer when there are many zones to choose from, so that a page stays light. */
export const rowsPerPage = (zones: number): number =>
  Math.max(25, Math.min(100, Math.floor(8000 / Math.max(1, zones))));
