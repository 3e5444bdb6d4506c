import { isTimeStart } from "./elapsed-seconds";
import { FILE_UNITS, type TrendAnswers } from "./trend-file";

export type AnswersVerdict = { status: "ok"; answers: TrendAnswers } | { status: "invalid"; message: string };

const CLOCKS: Record<string, TrendAnswers["clock"]> = {
  "standard-time-all-year": "standard-time-all-year",
  "standard-all-year": "standard-time-all-year",
  "local-time": "local-time",
};

/**
 * Answers written as `what=value`: `date-order=mdy`, `time-start=2026-01-01T00:00`, `clock=standard-time-all-year`, `unit=degF`, `unit:NAME=degF`,
 * `value-column=Average`, `flag-column=0,192` (the good flags).
 */
export function answersFromWords(pairs: readonly string[]): AnswersVerdict {
  const answers: TrendAnswers & { units?: Record<string, string> } = {};
  for (const pair of pairs) {
    // A point's name may hold "=", its unit cannot.
    const split = pair.startsWith("unit:") ? pair.lastIndexOf("=") : pair.indexOf("=");
    const what = pair.slice(0, Math.max(0, split));
    const value = pair.slice(split + 1);
    const invalid = (message: string): AnswersVerdict => ({ status: "invalid", message });
    if (what === "" || value === "")
      return invalid(`"${pair}" is not an answer: write what=value, for example date-order=mdy.`);
    if (what === "date-order") {
      if (value !== "mdy" && value !== "dmy") return invalid(`date-order is mdy or dmy, not "${value}".`);
      answers.dateOrder = value;
    } else if (what === "time-start") {
      if (!isTimeStart(value))
        return invalid(`time-start is a date and time on the building's clock, 2026-01-01T00:00, not "${value}".`);
      answers.timeStart = value;
    } else if (what === "clock") {
      const clock = CLOCKS[value];
      if (!clock) return invalid(`clock is standard-time-all-year or local-time, not "${value}".`);
      answers.clock = clock;
    } else if (what === "unit" || what.startsWith("unit:")) {
      if (value !== "other" && !FILE_UNITS.some((unit) => unit === value)) {
        return invalid(`"${value}" is no unit known here: use ${FILE_UNITS.join(", ")} or other.`);
      }
      if (what === "unit") answers.unit = value;
      else answers.units = { ...answers.units, [what.slice("unit:".length)]: value };
    } else if (what === "value-column") {
      answers.valueColumn = value;
    } else if (what === "flag-column") {
      answers.flagColumn = { good: value.split(",").map((flag) => flag.trim()) };
    } else {
      return invalid(
        `Nothing asks for "${what}": use date-order, time-start, clock, unit, unit:NAME, value-column or flag-column.`,
      );
    }
  }
  return { status: "ok", answers };
}
