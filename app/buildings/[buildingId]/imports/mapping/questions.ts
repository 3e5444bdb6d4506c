import type { OrderMeaning } from "@/lib/services/trend-imports/answer-meanings";
import { answerTo } from "@/lib/services/trend-imports/answer-to";
import type { FileAsk } from "@/lib/services/trend-imports/mapping";
import { formatLocal } from "@/lib/time/format";

/** One question to the files of a source, with what each answer would mean. */
export type FileQuestion = {
  /** Field of the form, `date-order.0`. */
  field: string;
  what: FileAsk["ask"]["what"];
  question: string;
  fileNames: string[];
  runIds: number[];
  /** Several answers may be right: the good flags of a column. */
  several: boolean;
  choices: { value: string; label: string; meaning: string }[];
  given: string[];
  byProfile: boolean;
};

const CHOICE_WORDS: Record<string, string> = {
  mdy: "month first",
  dmy: "day first",
  "standard-time-all-year": "standard time all year",
  "local-time": "local time, with daylight saving",
};
const CHOICE_MEANINGS: Record<string, string> = {
  "standard-time-all-year": "In summer each time is read one hour later on the wall clock; no row is lost.",
  "local-time": "Rows in the hour that the clocks skip are held back; all other times are read as they stand.",
};

/** Questions of the files, those of one source together. A proposal stands in the field until it is answered. */
export function fileQuestions(
  asks: readonly FileAsk[],
  meanings: ReadonlyMap<number, readonly OrderMeaning[]>,
  timeZone: string,
): FileQuestion[] {
  const groups = new Map<string, FileAsk[]>();
  for (const each of asks) {
    const key = JSON.stringify([each.source, each.ask.what, each.ask.choices, each.ask.column]);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].map((group, index) => {
    const [{ ask, given }] = group as [FileAsk];
    const answer = answerTo(ask, given) ?? ask.proposal ?? "";
    return {
      field: `${ask.what}.${index}`,
      what: ask.what,
      question: ask.question,
      fileNames: group.map((each) => each.fileName),
      runIds: group.map((each) => each.runId),
      several: ask.what === "flag-column",
      choices: ask.choices.map((value) => ({
        value,
        label: CHOICE_WORDS[value] ?? value,
        meaning: CHOICE_MEANINGS[value] ?? orderMeaning(value, group, meanings, timeZone),
      })),
      given: answer === "" ? [] : answer.split(","),
      byProfile: group.every((each) => each.byProfile),
    };
  });
}

function orderMeaning(
  order: string,
  group: readonly FileAsk[],
  meanings: ReadonlyMap<number, readonly OrderMeaning[]>,
  timeZone: string,
): string {
  const read = group.find((each) => meanings.has(each.runId));
  const meaning = read && meanings.get(read.runId)?.find((each) => each.order === order);
  if (!read || !meaning?.firstUtc || !meaning.lastUtc) return "";
  const at = (utc: string) => formatLocal(Date.parse(utc), timeZone, "date-time");
  const of = group.length > 1 ? `${read.fileName}: ` : "";
  return `${of}first reading ${at(meaning.firstUtc)}, last ${at(meaning.lastUtc)}`;
}
