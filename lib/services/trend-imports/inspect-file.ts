import { answersFromWords } from "@/lib/importers/trend-csv/answers-from-words";
import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import { ServiceError } from "../errors";

/** Says what a trend file holds and what would be asked; stores nothing and needs no building. Answers as `what=value`. */
export async function inspectFile(file: {
  name: string;
  bytes: Uint8Array;
  timeZone: string;
  locale?: string;
  answerWords: readonly string[];
}): Promise<TrendInspection> {
  const verdict = answersFromWords(file.answerWords);
  if (verdict.status === "invalid") throw new ServiceError("invalid", verdict.message);
  const { name: fileName, bytes, timeZone, locale } = file;
  return inspectTrendFile({ fileName, bytes, timeZone, locale, answers: verdict.answers });
}
