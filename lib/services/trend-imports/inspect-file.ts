import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import { readAnswerWords } from "./answer-words";

/** Says what a trend file holds and what would be asked; stores nothing and needs no building. Answers as `what=value`. */
export async function inspectFile(file: {
  name: string;
  bytes: Uint8Array;
  timeZone: string;
  locale?: string;
  answerWords: readonly string[];
}): Promise<TrendInspection> {
  const { name: fileName, bytes, timeZone, locale, answerWords } = file;
  return inspectTrendFile({ fileName, bytes, timeZone, locale, answers: readAnswerWords(answerWords) });
}
