import { formatNumber } from "@/lib/units/format";
import type { Range80 } from "@/lib/working/working";

export type Digits =
  /** Fixed decimals, for columns. */
  | { decimals: number }
  /** Significant digits at most, for figures that stand alone. */
  | { significant: number };

const MINUS = "\u2212";

/** A number for display. Without `digits`: three significant ones, but all digits of whole numbers below 10,000. */
export function formatFigure(value: number, digits?: Digits): string {
  if (digits && "decimals" in digits) return formatNumber(value, digits);
  if (!digits && Number.isInteger(value) && Math.abs(value) < 10_000) return formatNumber(value, { decimals: 0 });
  // Trailing zeros would claim a precision that an entered 1.2 does not have.
  const rounded = Number(value.toPrecision(digits?.significant ?? 3));
  let decimals = 0;
  while (decimals < 12 && Number(rounded.toFixed(decimals)) !== rounded) decimals++;
  return formatNumber(rounded, { decimals });
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

/** A figure with its sign of currency, which stands after a minus. */
export function prefixed(figure: string, prefix: string): string {
  return figure.startsWith(MINUS) ? `${MINUS}${prefix}${figure.slice(1)}` : `${prefix}${figure}`;
}

/** Low and high as one phrase; a dash where both are positive, the word "to" where a sign would stand beside a dash. */
export function spanWords(low: string, high: string, prefix = ""): string {
  if (low === high) return prefixed(low, prefix);
  const signed = low.startsWith(MINUS) || high.startsWith(MINUS);
  return signed ? `${prefixed(low, prefix)} to ${prefixed(high, prefix)}` : `${prefix}${low}\u2013${high}`;
}

/** A range in words: `4,500–6,000 kWh a year, most likely 5,200`. `unit`, `per` and `prefix` may be empty. */
export function rangeWords(
  range: Range80,
  { unit = "", per = "", prefix = "" }: { unit?: string; per?: string; prefix?: string },
): string {
  const { low, middle, high } = rangeFigures(range);
  const tail = [unit, per].filter(Boolean).join(" ");
  return `${spanWords(low, high, prefix)}${tail ? ` ${tail}` : ""}, most likely ${prefixed(middle, prefix)}`;
}
