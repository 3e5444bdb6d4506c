import { isEventText, isFailureWord, isMissingWord } from "./cell-words";
import { type DecimalMark, dressedNumber } from "./number-format";
import { type StatusMeaning, statusMeaning } from "./status-words";
import { readUnit } from "./units";

/** What a cell that is no plain number says. */
export type Cell =
  | { kind: "number"; value: number; unitText: string | null; status: StatusMeaning }
  | { kind: "missing" }
  | { kind: "event" }
  /** Missing in a column of numbers, a state in a column of words. */
  | { kind: "failure"; word: string; status: StatusMeaning }
  | { kind: "word"; word: string; code: number | null; status: StatusMeaning };

const WITH_STATUS = /^(.*?)\s*(\{[^{}]*\})$/s;
const WITH_UNIT = /^([-+\u2212]?\d[\d.,'\s\u00a0\u202f]*)\s*([^\d\s].*)$/;
const WITH_CODE = /^(.*\S)\s*\(\s*(-?\d{1,4})\s*\)$/;

/** Reads `72.4 °F {ok}`, `1,234.50`, `No data`, `Cooling (2)`, `Log disabled`. */
export function readCell(text: string, mark: DecimalMark): Cell {
  const whole = text.trim();
  const parted = WITH_STATUS.exec(whole);
  const body = parted ? (parted[1] as string) : whole;
  // A status word of no table is shown to the reader as a flag, never taken for bad.
  const status = parted ? (statusMeaning(parted[2] as string) ?? "flagged") : "good";
  const value = dressedNumber(body, mark);
  if (!Number.isNaN(value)) return { kind: "number", value, unitText: null, status };
  if (isMissingWord(body)) return { kind: "missing" };
  const united = WITH_UNIT.exec(body);
  if (united) {
    const number = dressedNumber(united[1] as string, mark);
    const unit = readUnit(united[2] as string);
    if (!Number.isNaN(number) && unit) return { kind: "number", value: number, unitText: unit.unitAsWritten, status };
  }
  if (isEventText(body)) return { kind: "event" };
  if (isFailureWord(body)) return { kind: "failure", word: body, status };
  const coded = WITH_CODE.exec(body);
  if (coded) return { kind: "word", word: coded[1] as string, code: Number(coded[2]), status };
  return { kind: "word", word: body, code: null, status };
}
