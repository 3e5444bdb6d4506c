import { formatFigure } from "@/app/_components/quantity/format-figure";
import { formulaParts, symbolParts } from "@/app/_components/quantity/formula-parts";
import { termFigures, workingDigits } from "@/app/_components/quantity/working-figures";
import type { Working } from "@/lib/working/working";
import { escaped } from "./escaped";

/** Terms are a line or two each: so many of them fit a page of either paper with the heading and the formula. */
const TERMS_KEPT_TOGETHER = 22;

/** A working as it is printed: formula, every value with unit, range, origin and source, and the result under a rule. */
export function workingMarkup(title: string, working: Working): string {
  const { formula, terms, result, notes = [], source } = working;
  const figures = termFigures(working);
  const rows = terms
    .map(({ symbol, label, unit, low, high, origin, source: from }, at) => {
      const span =
        low === undefined || high === undefined
          ? ""
          : `${formatFigure(low, { significant: 4 })} to ${formatFigure(high, { significant: 4 })}`;
      const cells = [label, figures[at] ?? "", unit || "\u2013", span, origin, from ?? ""].map(escaped);
      return `<tr><th scope="row">${symbolMarkup(symbol)}</th><td>${cells[0]}</td><td class="number">${cells[1]}</td><td class="unit">${cells[2]}</td><td class="number">${cells[3]}</td><td>${cells[4]}</td><td>${cells[5]}</td></tr>`;
    })
    .join("");
  const total = formatFigure(result.value, workingDigits(result.unit));
  const heads = ["Term", "What", "Value", "Unit", "Range", "Origin", "Source"]
    .map((head) => `<th scope="col"${head === "Value" || head === "Range" ? ' class="number"' : ""}>${head}</th>`)
    .join("");
  const remarks = [...notes, ...(source ? [`Formula: ${source}`] : [])].map(
    (note) => `<p class="note">${escaped(note)}</p>`,
  );
  const kept = terms.length <= TERMS_KEPT_TOGETHER ? " kept" : "";
  return `<div class="working${kept}" tabindex="0" role="group" aria-label="${escaped(title)}"><h3>${escaped(title)}</h3><p class="formula">${formulaMarkup(
    formula,
    terms.map(({ symbol }) => symbol),
  )}</p><table><thead><tr>${heads}</tr></thead><tbody>${rows}<tr class="total"><th scope="row">${symbolMarkup(result.symbol)}</th><td>${escaped(result.label)}</td><td class="number">${escaped(total)}</td><td class="unit">${escaped(result.unit || "\u2013")}</td><td></td><td></td><td></td></tr></tbody></table>${remarks.join("")}</div>`;
}

function symbolMarkup(symbol: string): string {
  const { base, sub } = symbolParts(symbol);
  return `<i>${escaped(base)}</i>${sub ? `<sub>${escaped(sub)}</sub>` : ""}`;
}

const formulaMarkup = (formula: string, symbols: readonly string[]): string =>
  formulaParts(formula, symbols)
    .map((part) => {
      if (part.kind === "symbol") return symbolMarkup(part.symbol);
      return part.kind === "power" ? `<sup>${escaped(part.text)}</sup>` : escaped(part.text);
    })
    .join("");
