import type { Range80 } from "@/lib/working/working";

export type Digits =
  /** Fixed decimals, for columns. */
  | { decimals: number }
  /** Significant digits, for figures that stand alone. */
  | { significant: number };

const MINUS = "\u2212";
const formats = new Map<string, Intl.NumberFormat>();

function formatter(options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = JSON.stringify(options);
  const known = formats.get(key) ?? new Intl.NumberFormat("en", options);
  formats.set(key, known);
  return known;
}

/** A number for display, with a true minus sign. Without `digits`: three significant ones, all digits of whole numbers below 10,000. */
export function formatFigure(value: number, digits?: Digits): string {
  const wholeSmall = Number.isInteger(value) && Math.abs(value) < 10_000;
  const chosen: Digits = digits ?? (wholeSmall ? { decimals: 0 } : { significant: 3 });
  const options: Intl.NumberFormatOptions =
    "decimals" in chosen
      ? { minimumFractionDigits: chosen.decimals, maximumFractionDigits: chosen.decimals }
      : { maximumSignificantDigits: chosen.significant };
  const text = formatter(options).format(value);
  const unsignedZero = /^-[0.,]*$/.test(text) ? text.slice(1) : text;
  return unsignedZero.replace("-", MINUS);
}

/** Step that leaves a range two digits of its own width: 4,512 to 5,987 is shown to the hundred. */
export function rangeStep({ p10, p90 }: Range80): number {
  const width = Math.abs(p90 - p10);
  const size = width > 0 ? width : Math.abs(p90);
  return size > 0 ? 10 ** (Math.floor(Math.log10(size)) - 1) : 1;
}

/** The three figures of a range, rounded alike to `step`. */
export function rangeFigures(range: Range80, step = rangeStep(range)): { low: string; middle: string; high: string } {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const show = (value: number): string => formatFigure(Math.round(value / step) * step, { decimals });
  return { low: show(range.p10), middle: show(range.p50), high: show(range.p90) };
}

/** Low and high as one phrase; a dash where both are positive, the word "to" where a sign would stand beside a dash. */
export function spanWords(low: string, high: string): string {
  if (low === high) return low;
  return low.startsWith(MINUS) || high.startsWith(MINUS) ? `${low} to ${high}` : `${low}\u2013${high}`;
}

/** A range in words: `4,500–6,000 kWh a year, most likely 5,200`. `unit` and `per` may be empty. */
export function rangeWords(
  range: Range80,
  { unit = "", per = "", prefix = "" }: { unit?: string; per?: string; prefix?: string },
): string {
  const { low, middle, high } = rangeFigures(range);
  const tail = [unit, per].filter(Boolean).join(" ");
  return `${prefix}${spanWords(low, high)}${tail ? ` ${tail}` : ""}, most likely ${prefix}${middle}`;
}
