import { answersFromWords } from "@/lib/importers/trend-csv/answers-from-words";
import type { TrendAnswers } from "@/lib/importers/trend-csv/trend-file";
import { ServiceError } from "../errors";

/** Answers to a file's questions as typed, `what=value` each; refuses one that nothing asks for. */
export function readAnswerWords(words: readonly string[]): TrendAnswers {
  const verdict = answersFromWords(words);
  if (verdict.status === "invalid") throw new ServiceError("invalid", verdict.message);
  return verdict.answers;
}
