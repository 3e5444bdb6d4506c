import type { WriteSheet } from "hucre/xlsx";
import type { CaseFinance } from "@/lib/business-case/case-finance";
import type { CaseInput } from "@/lib/business-case/case-input";
import { type LiveCell, liveSheet, MONEY, strong } from "../live-sheet";

/** Where other sheets find the inputs. */
export type InputPlaces = {
  saving: string;
  outlay: string;
  life: string;
  rate: string;
  escalation: string;
  back: string;
};

const YEARS_BACK = { end: 0, middle: 0.5, beginning: 1 } as const;

/** A sum over no rows would be one over itself. */
const sumOf = (first: number, last: number): string => (last < first ? "0" : `SUM(B${first}:B${last})`);

/** All that the totals are recomputed from; change a value here and the other sheets follow. */
export function inputsSheet(
  { parts, terms, building }: CaseInput,
  { plan, used }: CaseFinance,
): { sheet: WriteSheet; places: InputPlaces } {
  const rows: LiveCell[][] = [[strong("Saving in the first year, stated"), strong(`${building.currency} a year`)]];
  const firstPart = rows.length + 1;
  for (const { label, statedPerYear } of parts) rows.push([label, { value: statedPerYear, format: MONEY }]);
  rows.push([strong("together"), { formula: sumOf(firstPart, rows.length), value: plan.savingPerYear, format: MONEY }]);
  const saving = rows.length;
  rows.push([], [strong("Outlay"), strong(building.currency)]);
  const firstOutlay = rows.length + 1;
  for (const { label, amount } of terms.outlay) rows.push([label, { value: amount, format: MONEY }]);
  rows.push([strong("together"), { formula: sumOf(firstOutlay, rows.length), value: plan.outlay, format: MONEY }]);
  const outlay = rows.length;
  rows.push([], [strong("Terms"), null, strong("Unit"), strong("Source")]);
  const first = rows.length + 1;
  for (const { label, value, unit, source } of used) rows.push([label, value, unit, source]);
  rows.push([`flows fall at the ${plan.timing} of a year: years back`, YEARS_BACK[plan.timing], "years", "entered"]);
  const at = (row: number): string => `Inputs!$B$${row}`;
  return {
    sheet: liveSheet("Inputs", rows, [56, 16, 12, 80]),
    places: {
      saving: at(saving),
      outlay: at(outlay),
      life: at(first),
      rate: at(first + 1),
      escalation: at(first + 2),
      back: at(first + 3),
    },
  };
}
