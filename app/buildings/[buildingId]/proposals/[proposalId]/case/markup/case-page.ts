import type { CaseDocument, CaseSection } from "@/lib/business-case/case-document";
import { formatLocal } from "@/lib/time/format";
import { sectionMarkup } from "./blocks";
import { caseStyle, type Paper } from "./case-style";
import { escaped } from "./escaped";

type Site = {
  paper: Paper;
  /** Faces of the text's letters, as part of the style sheet; without them the machine's own are taken. */
  fontFaces: string;
  /** Where a reader on a screen goes back to. */
  backHref: string;
};

/** A business case as one page to print: nothing is loaded from anywhere, so that it can be kept as it is. */
export function casePage(document: CaseDocument, { paper, fontFaces, backHref }: Site): string {
  const groups = pageGroups(document.sections);
  const issued = `Issued ${formatLocal(document.issuedAtMs, document.timeZone, "date")} by ${document.issuedBy}`;
  const head = `<header><p class="bar"><a href="${escaped(backHref)}">Back</a> Print with your browser, without headers and footers of its own: ${paper === "a4" ? "A4" : "Letter"} paper.</p><p class="over">Business case ${escaped(document.number)} · ${escaped(document.buildingName)}</p><h1>${escaped(document.title)}</h1><p class="over">${escaped(issued)}. Figures and assumptions are those of that day. Frozen; printed again, it reads the same.</p></header>`;
  const body = groups
    .map((sections, at) => {
      const inside = sections.map((each) => sectionMarkup(each, document)).join("");
      return `<div class="group" style="page:group${at}">${at === 0 ? head : ""}${inside}</div>`;
    })
    .join("");
  const running = `Business case ${document.number}: ${document.title}`;
  const style = caseStyle({
    paper,
    running,
    foot: `${document.buildingName}. ${issued}`,
    groups: groups.map((sections) => sections.map(({ title }) => title).join(" · ")),
  });
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><link rel="icon" href="/icon.svg"><title>${escaped(running)}</title><style>${fontFaces}${style}</style></head><body><main>${body}</main></body></html>`;
}

/** Sections that share pages: each that starts a page begins a group. */
function pageGroups(sections: readonly CaseSection[]): CaseSection[][] {
  const groups: CaseSection[][] = [];
  for (const section of sections) {
    const last = groups.at(-1);
    if (last && !section.startsPage) last.push(section);
    else groups.push([section]);
  }
  return groups;
}
