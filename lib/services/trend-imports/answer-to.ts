import type { TrendAsk } from "@/lib/importers/trend-csv/trend-file";
import type { FileAnswers } from "./run-input";

/** The answer to one question, as a text of the form; null when it is not given. */
export function answerTo({ what }: TrendAsk, answers: FileAnswers): string | null {
  if (what === "flag-column") return answers.flagColumn ? answers.flagColumn.good.join(",") : null;
  if (what === "unit") return null;
  const { dateOrder, timeStart, clock, valueColumn } = answers;
  return { "date-order": dateOrder, "time-start": timeStart, clock, "value-column": valueColumn }[what] ?? null;
}
