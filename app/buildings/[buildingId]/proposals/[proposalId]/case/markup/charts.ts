import { rangeFigures, spanWords } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import type { CaseChart } from "@/lib/business-case/case-document";
import { formatMoney } from "@/lib/money/format";
import { moneyFromAmount } from "@/lib/money/money";
import { cashFlowChart } from "./cash-flow-chart";
import { AGAINST, bar, drawing, LEFT, line, nameAt, RIGHT, scaleOf, words } from "./chart-frame";

const ROW = 30;
const FOR = "#8a8f8b";
const STRONG = "#444b46";

/** A chart of a case as a vector drawing. Each has its table in the document. */
export function chartMarkup(chart: CaseChart, currency: string): string {
  const whole = (amount: number): string => formatMoney(moneyFromAmount(amount, currency), { whole: true });
  switch (chart.kind) {
    case "parts":
      return partsChart(chart, whole);
    case "ranges":
      return rangesChart(chart, currencySign(currency));
    case "tornado":
      return tornadoChart(chart, whole);
    case "cash-flow":
      return cashFlowChart(chart, whole);
  }
}

type Of<K extends CaseChart["kind"]> = Extract<CaseChart, { kind: K }>;

function partsChart({ caption, parts }: Of<"parts">, whole: (amount: number) => string): string {
  const at = scaleOf(
    parts.map(({ value }) => value),
    LEFT,
    RIGHT,
  );
  const rows = parts.map(({ label, value }, row) => {
    const y = row * ROW + 18;
    const end = Math.max(at(value), at(0));
    return (
      nameAt(label, y) +
      bar(at(0), at(value), y - 8, 16, value < 0 ? AGAINST : FOR) +
      words(whole(value), end + 6, y + 4)
    );
  });
  return drawing(caption, parts.length * ROW + 8, rows.join("") + line(at(0), 4, at(0), parts.length * ROW + 4));
}

function rangesChart({ caption, lines }: Of<"ranges">, prefix: string): string {
  const at = scaleOf(
    lines.flatMap(({ range }) => [range.p10, range.p90]),
    LEFT,
    RIGHT - 60,
  );
  const rows = lines.map(({ label, range, strong }, row) => {
    const y = row * ROW + 18;
    const { low, middle, high } = rangeFigures(range);
    return (
      nameAt(label, y) +
      bar(at(range.p10), at(range.p90), y - 6, 12, strong ? STRONG : "#c9cdc9") +
      `<rect x="${(at(range.p50) - 1.5).toFixed(1)}" y="${y - 10}" width="3" height="20" fill="#fff" stroke="#111" stroke-width="0.8"/>` +
      words(`${spanWords(low, high, prefix)} (${middle})`, at(range.p90) + 6, y + 4)
    );
  });
  return drawing(caption, lines.length * ROW + 8, rows.join("") + line(at(0), 4, at(0), lines.length * ROW + 4));
}

function tornadoChart({ caption, base, lines }: Of<"tornado">, whole: (amount: number) => string): string {
  const at = scaleOf(
    lines.flatMap(({ lowTotal, highTotal }) => [lowTotal, highTotal]).concat(base),
    LEFT + 50,
    RIGHT - 10,
    false,
  );
  const top = 20;
  const rows = lines.map(({ label, lowTotal, highTotal }, row) => {
    const y = top + row * ROW + 18;
    const [left, right] = [Math.min(lowTotal, highTotal), Math.max(lowTotal, highTotal)];
    return (
      nameAt(label, y) +
      bar(at(base), at(lowTotal), y - 8, 16, AGAINST) +
      bar(at(base), at(highTotal), y - 8, 16, FOR) +
      words(whole(left), Math.min(at(left), at(base)) - 6, y + 4, "end") +
      words(whole(right), Math.max(at(right), at(base)) + 6, y + 4)
    );
  });
  const foot = top + lines.length * ROW + 22;
  const key =
    bar(LEFT + 50, LEFT + 66, foot - 9, 11, AGAINST) +
    words("at its P10", LEFT + 72, foot) +
    bar(LEFT + 180, LEFT + 196, foot - 9, 11, FOR) +
    words("at its P90", LEFT + 202, foot);
  const middle = line(at(base), top - 4, at(base), top + lines.length * ROW + 4, 1.4);
  return drawing(caption, foot + 10, rows.join("") + middle + words(whole(base), at(base), top - 8, "middle") + key);
}
