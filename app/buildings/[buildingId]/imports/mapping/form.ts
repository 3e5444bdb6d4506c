import { numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { EnteredRows } from "@/lib/services/trend-imports/enter-mapping";
import type { MappingEntry } from "@/lib/services/trend-imports/mapping-entry";
import type { FileAnswers } from "@/lib/services/trend-imports/run-input";

/** How a row stood when the page was drawn, as one text: a row that still reads so was not touched. */
export const rowText = (what: string, zone: string, unit: string, continues: string): string =>
  [what, zone, unit, continues].join("|");

/** Indices of the rows of a posted page. */
const rowsOf = (values: PostedValues): number[] =>
  Array.from({ length: Math.min(1000, numberOf(values, "pointCount") || 0) }, (_, i) => i).filter(
    (i) => values[`name.${i}`] !== undefined,
  );

/**
 * Posted rows as entries: all of them when they are confirmed as they stand, else those that were touched. Rows whose
 * kind is open stay open.
 */
export function enteredFromForm(values: PostedValues, scope: "all" | "touched"): EnteredRows {
  const entries: Record<string, MappingEntry> = {};
  for (const i of rowsOf(values)) {
    const [what, zone, unit] = [`what.${i}`, `zone.${i}`, `unit.${i}`].map((field) => textOf(values, field));
    const continues = values[`continues.${i}`] ?? "";
    const isTouched = rowText(what ?? "", zone ?? "", unit ?? "", continues) !== values[`was.${i}`];
    if (scope === "touched" ? !isTouched : what === "" && !isTouched) continue;
    entries[values[`name.${i}`] as string] = {
      what: (what ?? "") as MappingEntry["what"],
      zoneId: numberOf(values, `zone.${i}`),
      unit: unit || null,
      continues: continues || null,
    };
  }
  return { entries, answersByRun: answersFrom(values), profileNames: profileNamesFrom(values) };
}

function answersFrom(values: PostedValues): Record<string, FileAnswers> {
  const answersByRun: Record<string, FileAnswers> = {};
  for (const [field, value] of Object.entries(values)) {
    const match = /^answer\.([a-z-]+)\.(\d+)$/.exec(field);
    if (!match || value === "") continue;
    const answer = answerOf(match[1] as string, value);
    for (const runId of textOf(values, `runs.${match[1]}.${match[2]}`).split(",").filter(Boolean))
      answersByRun[runId] = { ...answersByRun[runId], ...answer };
  }
  return answersByRun;
}

function answerOf(what: string, value: string): FileAnswers {
  if (what === "date-order") return { dateOrder: value as FileAnswers["dateOrder"] };
  if (what === "time-start") return { timeStart: value };
  if (what === "clock") return { clock: value as FileAnswers["clock"] };
  if (what === "value-column") return { valueColumn: value };
  if (what === "flag-column") return { flagColumn: { good: value.split(",").map((each) => each.trim()) } };
  return {};
}

function profileNamesFrom(values: PostedValues): Record<string, string> {
  const names: Record<string, string> = {};
  for (const [field, key] of Object.entries(values)) {
    const match = /^source\.(\d+)$/.exec(field);
    if (match) names[key] = textOf(values, `profile.${match[1]}`);
  }
  return names;
}

/** Names of the rows whose box is ticked, or of all rows of the page when the box for all is. */
export const selectedNames = (values: PostedValues): string[] =>
  rowsOf(values)
    .filter((i) => values[`select.${i}`] !== undefined || values.allOfPage !== undefined)
    .map((i) => values[`name.${i}`] as string);

/** What is to be set for the selected rows; fields left alone set nothing. */
export function bulkChangeFrom(values: PostedValues): Partial<Pick<MappingEntry, "what" | "zoneId" | "unit">> {
  const [what, zone, unit] = ["bulk.what", "bulk.zone", "bulk.unit"].map((field) => textOf(values, field));
  return {
    ...(what ? { what: what as MappingEntry["what"] } : {}),
    ...(zone ? { zoneId: zone === "none" ? null : Number(zone) } : {}),
    ...(unit ? { unit } : {}),
  };
}

/** Most faults that are written out; the rest is counted. */
const MOST_SHOWN = 40;

/**
 * Errors by point name, as the use-case gives them, to errors by field of the page. Points that are not on it are
 * gathered into one message that leads to the filter.
 */
export function fieldErrorsOfForm(errors: Record<string, string>, values: PostedValues): Record<string, string> {
  const indexOf = new Map(rowsOf(values).map((i) => [values[`name.${i}`] as string, i]));
  const shown: [string, string][] = [];
  const elsewhere: string[] = [];
  for (const [path, message] of Object.entries(errors)) {
    const index = path.startsWith("points.") ? indexOf.get(path.slice(7)) : undefined;
    if (index !== undefined) shown.push([`what.${index}`, message]);
    else if (path.startsWith("points.")) elsewhere.push(path.slice(7));
    else shown.push([questionField(path, values), message]);
  }
  const cut = shown.slice(0, MOST_SHOWN);
  const rest = shown.length - cut.length;
  if (rest > 0) cut.push(["points", `And ${rest} more on this page.`]);
  if (elsewhere.length > 0) cut.push(["show", elsewhereWords(elsewhere)]);
  return Object.fromEntries(cut);
}

function questionField(path: string, values: PostedValues): string {
  const [, runId, what] = /^answers\.(\d+)\.([a-z-]+)$/.exec(path) ?? [];
  if (!runId) return path;
  const field = Object.keys(values).find(
    (each) => each.startsWith(`runs.${what}.`) && textOf(values, each).split(",").includes(runId),
  );
  return field ? field.replace("runs.", "answer.") : path;
}

function elsewhereWords(names: readonly string[]): string {
  const listed = names.slice(0, 3).join(", ");
  const more = names.length > 3 ? ` and ${names.length - 3} more` : "";
  return `Not shown here, and open: ${listed}${more}. Show only the open ones to look at them.`;
}
