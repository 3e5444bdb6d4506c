import type { Working } from "@/lib/working/working";
import { type CaseBlock, type CaseSection, text } from "../case-document";
import type { CaseFinance } from "../case-finance";
import type { CaseInput } from "../case-input";
import { financeWorkings } from "./finance-workings";

/** Every assumption with its source, and every working. */
export function appendixSections(input: CaseInput, finance: CaseFinance): CaseSection[] {
  const { assumptions, building } = input;
  return [
    {
      id: "assumptions",
      title: "Appendix A: assumptions and sources",
      startsPage: true,
      blocks: [
        {
          kind: "table",
          id: "assumptions",
          caption: "Assumptions used, as they stood at issue",
          columns: [
            { head: "Assumption", align: "text" },
            { head: "Value", align: "number" },
            { head: "Range", align: "number" },
            { head: "Unit", align: "text" },
            { head: "Origin", align: "text" },
            { head: "Source", align: "text" },
          ],
          rows: assumptions.map((each) => [
            text(each.label),
            text(figure(each.value)),
            text(each.low === each.high ? "" : `${figure(each.low)} to ${figure(each.high)}`),
            text(each.unit || "–"),
            text(each.origin),
            text(each.source),
          ]),
          total: null,
        },
      ],
    },
    {
      id: "workings",
      title: "Appendix B: workings",
      startsPage: true,
      blocks: [
        ...workingBlocks("Saving in the first year", input.saving.working),
        ...workingBlocks("Electricity saved in the first year", input.electricKwh.working),
        ...workingBlocks("Heat saved in the first year", input.heatKwh.working),
        ...workingBlocks("Emissions saved in the first year", input.emissionsKgCo2.working),
        ...financeWorkings(finance, building.currency).flatMap(({ title, working }) => workingBlocks(title, working)),
      ],
    },
  ];
}

const figure = (value: number): string => String(Number(value.toPrecision(4))).replace("-", "\u2212");

/** A working and, after it, those of its terms, each under its own name. */
function workingBlocks(title: string, working: Working | null): CaseBlock[] {
  if (working === null) return [];
  const below = working.terms.flatMap((term) =>
    term.working ? workingBlocks(`${title}: ${term.label}`, term.working) : [],
  );
  const flat: Working = { ...working, terms: working.terms.map(({ working: _, ...term }) => term) };
  return [{ kind: "working", title, working: flat }, ...below];
}
