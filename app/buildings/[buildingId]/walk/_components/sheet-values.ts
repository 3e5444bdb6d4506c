/** What stands in the fields of the sheet, by their names. */
export type SheetValues = Partial<Record<string, string>>;

/** Largest readings of a plug-in device: beyond them a decimal point was left out. */
const MOST = { W: 5000, A: 60 } as const;

/** A reading as typed, with a comma or a point; null where the setting was not measured. */
export function readingOf(typed: string, unit: "W" | "A"): { value: number | null } | { fault: string } {
  if (typed === "") return { value: null };
  const value = /^\d*[.,]?\d+$|^\d+[.,]$/.test(typed) ? Number(typed.replace(",", ".")) : Number.NaN;
  if (Number.isNaN(value)) return { fault: `"${typed}" is no number of ${unit}: type digits only.` };
  if (value > MOST[unit]) return { fault: `${typed} ${unit} is more than an outlet gives: was the point left out?` };
  return { value };
}
