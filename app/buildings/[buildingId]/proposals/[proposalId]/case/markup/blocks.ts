import type { CaseBlock, CaseDocument, CaseSection, CaseTable, CaseValue } from "@/lib/business-case/case-document";
import { chartMarkup } from "./charts";
import { escaped } from "./escaped";
import { valueWords } from "./value-words";
import { workingMarkup } from "./working-markup";

/** A table of at most so many rows stands on one page; a longer one is cut between rows, under repeated headings. */
const ROWS_KEPT_TOGETHER = 14;
/** Rows of sentences are tall: fewer of them are kept together. */
const SENTENCES_KEPT_TOGETHER = 6;

/** A section with its heading, which stays with what follows it. */
export function sectionMarkup(section: CaseSection, document: CaseDocument): string {
  const blocks = section.blocks.map((each) => blockMarkup(each, document)).join("");
  return `<section id="${escaped(section.id)}"><h2>${escaped(section.title)}</h2>${blocks}</section>`;
}

function blockMarkup(block: CaseBlock, { currency }: CaseDocument): string {
  const words = (value: CaseValue): string => escaped(valueWords(value, currency));
  switch (block.kind) {
    case "paragraph":
      return `<p>${block.runs.map((run) => (typeof run === "string" ? escaped(run) : `<b>${words(run)}</b>`)).join("")}</p>`;
    case "heading":
      return `<h3>${escaped(block.text)}</h3>`;
    case "list":
      return `<ul>${block.items.map((item) => `<li>${escaped(item)}</li>`).join("")}</ul>`;
    case "figures":
      return `<dl class="figures">${block.figures
        .map(
          ({ label, value, note }) =>
            `<div><dt>${escaped(label)}</dt><dd>${words(value)}${note ? ` <small>${escaped(note)}</small>` : ""}</dd></div>`,
        )
        .join("")}</dl>`;
    case "table":
      return tableMarkup(block, currency);
    case "chart":
      return chartMarkup(block.chart, currency);
    case "working":
      return workingMarkup(block.title, block.working);
  }
}

export function tableMarkup({ id, caption, columns, rows, total }: CaseTable, currency: string): string {
  const most = columns.some(({ align }) => align === "number") ? ROWS_KEPT_TOGETHER : SENTENCES_KEPT_TOGETHER;
  const kept = rows.length <= most ? " kept" : "";
  const side = (at: number): string => (columns[at]?.align === "number" ? ' class="number"' : "");
  const cells = (row: readonly CaseValue[]): string =>
    row
      .map((value, at) => {
        const words = escaped(valueWords(value, currency, "table"));
        return at === 0 && words !== "" ? `<th scope="row"${side(at)}>${words}</th>` : `<td${side(at)}>${words}</td>`;
      })
      .join("");
  const heads = columns.map(({ head }, at) => `<th scope="col"${side(at)}>${escaped(head)}</th>`).join("");
  const body = rows.map((row) => `<tr>${cells(row)}</tr>`).join("");
  const last = total ? `<tr class="total">${cells(total)}</tr>` : "";
  return `<div class="table${kept}" tabindex="0" role="group" aria-label="${escaped(caption)}"><table id="table-${escaped(id)}"><caption>${escaped(caption)}</caption><thead><tr>${heads}</tr></thead><tbody>${body}${last}</tbody></table></div>`;
}
