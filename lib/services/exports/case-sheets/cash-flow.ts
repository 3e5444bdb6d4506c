import type { WriteSheet } from "hucre/xlsx";
import type { CaseFinance } from "@/lib/business-case/case-finance";
import { type CashFlowYear, cashFlowByYear } from "@/lib/finance/cash-flow";
import { singlePresentValue } from "@/lib/finance/present-value";
import { type LiveCell, liveSheet, MONEY, strong } from "../live-sheet";
import type { InputPlaces } from "./inputs";

export type FlowPlaces = { presentValues: string; savings: string };

/** Years that the sheet has room for at least, so that the life can be lengthened in it. */
const LEAST_YEARS = 10;

/** Every year's flow as formulas of the inputs. */
export function cashFlowSheet({ plan, used }: CaseFinance, at: InputPlaces): { sheet: WriteSheet; places: FlowPlaces } {
  const life = used[0]?.high ?? plan.lifeYears;
  const last = Math.max(LEAST_YEARS, Math.ceil(life));
  const known = new Map(cashFlowByYear(plan).map((each) => [each.year, each]));
  const rows: LiveCell[][] = [
    [
      "Year",
      "Share in force",
      "Outlay",
      "Saving",
      "Net",
      "Cumulative",
      "Present factor",
      "Present value",
      "Cumulative present value",
    ].map(strong),
  ];
  let before: CashFlowYear | undefined;
  for (let year = 0; year <= last; year++) {
    const now: CashFlowYear = known.get(year) ?? {
      ...(before as CashFlowYear),
      year,
      inForce: 0,
      outlay: 0,
      saving: 0,
      upkeep: 0,
      net: 0,
      presentFactor: singlePresentValue(plan.rate, year, plan.timing),
      presentValue: 0,
    };
    rows.push(flowRow(now, rows.length + 1, at));
    before = now;
  }
  const end = rows.length;
  return {
    sheet: liveSheet("Cash flow", rows, [8, 14, 14, 14, 14, 14, 14, 14, 22]),
    places: { presentValues: `'Cash flow'!$H$2:$H$${end}`, savings: `'Cash flow'!$D$2:$D$${end}` },
  };
}

function flowRow(now: CashFlowYear, row: number, at: InputPlaces): LiveCell[] {
  const first = now.year === 0;
  const money = (formula: string, value: number): LiveCell => ({ formula, value, format: MONEY });
  return [
    now.year,
    { formula: first ? "0" : `MAX(0,MIN(1,${at.life}-(A${row}-1)))`, value: now.inForce },
    money(first ? at.outlay : "0", now.outlay),
    money(`${at.saving}*(1+${at.escalation})^A${row}*B${row}`, now.saving),
    money(`D${row}-C${row}`, now.net),
    money(first ? `E${row}` : `F${row - 1}+E${row}`, now.cumulative),
    { formula: first ? "1" : `(1+${at.rate})^(${at.back}-A${row})`, value: now.presentFactor },
    money(`E${row}*G${row}`, now.presentValue),
    money(first ? `H${row}` : `I${row - 1}+H${row}`, now.presentCumulative),
  ];
}
