import type { Working } from "@/lib/working/working";
import { type CaseBlock, type CaseSection, text } from "../case-document";
import type { CaseFinance } from "../case-finance";
import type { CaseInput } from "../case-input";
import { financeWorkings } from "./finance-workings";

/** Every assumption with its source, and every working. */
export function appendixSections(input: CaseInput, finance: CaseFinance): CaseSection[] {
  const { assumptions } = input;
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
      blocks: [...caseWorkings(input, finance).map((each): CaseBlock => ({ kind: "working", ...each }))],
    },
  ];
}

const figure = (value: number): string => String(Number(value.toPrecision(4))).replace("-", "\u2212");

type TitledWorking = { title: string; working: Working };

/** Every working of a case, each with those of its terms after it, none inside another and none twice. */
export function caseWorkings(input: CaseInput, finance: CaseFinance): TitledWorking[] {
  const all = [
    ...flatWorkings("Saving in the first year", input.saving.working),
    ...flatWorkings("Electricity saved in the first year", input.electricKwh.working),
    ...flatWorkings("Heat saved in the first year", input.heatKwh.working),
    ...flatWorkings("Emissions saved in the first year", input.emissionsKgCo2.working),
    ...input.circuits.flatMap(({ name, working }) => flatWorkings(`Load of circuit ${name} as expected`, working)),
    ...financeWorkings(finance, input.building.currency).flatMap(({ title, working }) => flatWorkings(title, working)),
  ];
  const seen = new Set<string>();
  return all.filter(({ working }) => {
    const written = JSON.stringify(working);
    return !seen.has(written) && seen.add(written);
  });
}

function flatWorkings(title: string, working: Working | null): TitledWorking[] {
  if (working === null) return [];
  const below = working.terms.flatMap((term) =>
    term.working ? flatWorkings(`${term.label}, part of ${working.result.label}`, term.working) : [],
  );
  const flat: Working = {
    ...working,
    terms: working.terms.map(({ working: _, ...term }) =>
      term.assumptionId === undefined ? term : { ...term, source: "Appendix A" },
    ),
  };
  return [{ title, working: flat }, ...below];
}
