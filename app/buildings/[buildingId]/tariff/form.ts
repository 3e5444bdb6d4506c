import { choiceOf, numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { readTariff } from "@/lib/services/tariffs/save";
import type { TariffInput } from "@/lib/services/tariffs/tariff-input";

type Tariff = NonNullable<ReturnType<typeof readTariff>>;

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"] as const;
const DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
const WRITTEN = (names: readonly string[]) => names.map((each) => each[0]?.toUpperCase() + each.slice(1));

/** Posted lines to what the use-case takes; what cannot be read becomes what it refuses, by its line. */
export function tariffInputFromForm(values: PostedValues): TariffInput {
  const bills = linesOf(textOf(values, "bills"));
  const ratchetPct = numberOf(values, "ratchetPct");
  return {
    energyKind: choiceOf(values, "energyKind"),
    periods: linesOf(textOf(values, "periods")).map(periodFromLine),
    blocks: linesOf(textOf(values, "blocks")).map((line) => {
      const [upTo = "", price = ""] = partsOf(line);
      return { upToKwh: /^above$/i.test(upTo) ? null : numberIn(upTo), pricePerKwh: numberIn(price) };
    }),
    bills:
      bills.length === 0
        ? null
        : bills.map((line) => {
            const [kwh = "", kw = ""] = partsOf(line);
            return { energyKwh: numberIn(kwh), demandKw: numberIn(kw) };
          }),
    ratchetFraction: ratchetPct === null ? null : ratchetPct / 100,
  };
}

/** "On-peak; 0.165; Jun-Sep; Mon-Fri; 12:00-18:00" */
function periodFromLine(line: string): TariffInput["periods"][number] {
  const [name = "", price = "", months = "", days = "", hours = ""] = partsOf(line);
  const clock = /^(\d{1,2}):(\d{2})\s*[-\u2013]\s*(\d{1,2}):(\d{2})$/.exec(hours);
  const minute = (hour: string | undefined, rest: string | undefined) => Number(hour) * 60 + Number(rest);
  const all = /^all$/i.test(hours);
  return {
    name,
    pricePerKwh: numberIn(price),
    months: placesIn(months, MONTHS),
    weekdays: placesIn(days, DAYS),
    startMinute: all ? 0 : clock ? minute(clock[1], clock[2]) : Number.NaN,
    endMinute: all ? 1440 : clock ? minute(clock[3], clock[4]) : Number.NaN,
  };
}

/** Places (from 1) of names in a list such as "Jun-Sep", "Mon, Wed" or "all"; none when a part is no name. Over the end of the list "Nov-Feb" runs on. */
export function placesIn(text: string, names: readonly string[]): number[] {
  if (/^all$/i.test(text)) return names.map((_, k) => k + 1);
  const found = new Set<number>();
  for (const part of text.split(",")) {
    const [from, to = from] = part
      .split(/[-\u2013]/)
      .map((each) => names.indexOf(each.trim().slice(0, 3).toLowerCase()));
    if (from === undefined || to === undefined || from < 0 || to < 0) return [];
    for (let k = from; ; k = (k + 1) % names.length) {
      found.add(k + 1);
      if (k === to) break;
    }
  }
  return [...found].sort((a, b) => a - b);
}

export function formFromTariff(tariff: Tariff | null): PostedValues {
  if (!tariff) return { energyKind: "one-price" };
  const clock = (minute: number) =>
    `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
  const list = (places: readonly number[], names: readonly string[]) =>
    places.length === names.length ? "all" : places.map((each) => WRITTEN(names)[each - 1]).join(", ");
  return {
    energyKind: tariff.energyKind,
    periods: tariff.periods
      .map((each) =>
        [
          each.name,
          each.pricePerKwh,
          list(each.months, MONTHS),
          list(each.weekdays, DAYS),
          each.startMinute === 0 && each.endMinute === 1440
            ? "all"
            : `${clock(each.startMinute)}-${clock(each.endMinute)}`,
        ].join("; "),
      )
      .join("\n"),
    blocks: tariff.blocks.map((each) => `${each.upToKwh ?? "above"}; ${each.pricePerKwh}`).join("\n"),
    bills: (tariff.bills ?? []).map((each) => `${each.energyKwh}; ${each.demandKw}`).join("\n"),
    ratchetPct: tariff.ratchetFraction === null ? "" : String(Number((100 * tariff.ratchetFraction).toPrecision(6))),
  };
}

/** Messages of a field of lines: that of the whole, and one of each line at fault with its number and all its faults. */
export function lineErrors(errors: Readonly<Record<string, string>>, name: string): string[] {
  const byLine = new Map<number, string[]>();
  for (const [path, message] of Object.entries(errors)) {
    if (!path.startsWith(`${name}.`)) continue;
    const line = Number(path.split(".")[1]) + 1;
    const said = message.replace(/\.$/, "");
    const faults = byLine.get(line) ?? [];
    byLine.set(line, faults.includes(said) ? faults : [...faults, said]);
  }
  const lines = [...byLine].sort(([a], [b]) => a - b).map(([line, faults]) => `Line ${line}: ${faults.join("; ")}.`);
  return errors[name] ? [errors[name], ...lines] : lines;
}

const linesOf = (text: string): string[] =>
  text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter(Boolean);
const partsOf = (line: string): string[] => line.split(/[;\t]/).map((part) => part.trim());
const numberIn = (text: string): number => numberOf({ it: text }, "it") ?? Number.NaN;
