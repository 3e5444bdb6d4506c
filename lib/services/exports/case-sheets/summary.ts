import type { WriteSheet } from "hucre/xlsx";
import type { CaseFinance } from "@/lib/business-case/case-finance";
import type { CaseInput } from "@/lib/business-case/case-input";
import { formatLocal } from "@/lib/time/format";
import type { Range80 } from "@/lib/working/working";
import { type LiveCell, liveSheet, MONEY, strong } from "../live-sheet";
import type { FlowPlaces } from "./cash-flow";
import type { InputPlaces } from "./inputs";

/** Totals as formulas, with their ranges over the draws beside them as numbers. */
export function summarySheet(
  { number, proposal, building, issuedAtMs, issuedBy, saving, electricKwh, heatKwh, emissionsKgCo2 }: CaseInput,
  { figures, ranges, plan }: CaseFinance,
  inputs: InputPlaces,
  flow: FlowPlaces,
): WriteSheet {
  const per = building.currency;
  const npv = `SUM(${flow.presentValues})`;
  const spread = ({ p10, p50, p90 }: Range80, format: string): LiveCell[] =>
    [p10, p50, p90].map((value) => ({ value, format }));
  const stated = (label: string, value: number, unit: string, range: Range80): LiveCell[] => [
    label,
    { value, format: "#,##0.0" },
    unit,
    ...spread(range, "#,##0.0"),
  ];
  const rows: LiveCell[][] = [
    [strong(`Business case ${number}: ${proposal.title}`)],
    [`${building.name}, issued ${formatLocal(issuedAtMs, building.timeZone, "date")} by ${issuedBy}`],
    ["Stated values are live formulas of the inputs; P10, P50 and P90 are those of the draws at issue."],
    [],
    ["Figure", "Stated", "Unit", "P10", "P50", "P90"].map(strong),
    [
      "saving in the first year",
      { formula: inputs.saving, value: saving.stated, format: MONEY },
      `${per} a year`,
      ...spread(saving, MONEY),
    ],
    ["outlay", { formula: inputs.outlay, value: plan.outlay, format: MONEY }, per],
    [
      "simple payback",
      {
        formula: `IF(${inputs.outlay}=0,0,IF(${inputs.saving}>0,${inputs.outlay}/${inputs.saving},"never"))`,
        value: figures.simplePaybackYears ?? "never",
        format: "0.00",
      },
      "years",
    ],
    [
      "net present value",
      { formula: npv, value: figures.netPresentValue, format: MONEY },
      per,
      ...spread(ranges.netPresentValue, MONEY),
    ],
    [
      "savings-to-investment ratio",
      {
        formula: `IF(${inputs.outlay}>0,(${npv}+${inputs.outlay})/${inputs.outlay},"none without an outlay")`,
        value: figures.savingsToInvestment ?? "none without an outlay",
        format: "0.00",
      },
      "",
    ],
    stated("electricity", electricKwh.stated, "kWh a year", electricKwh),
    stated("heat", heatKwh.stated, "kWh a year", heatKwh),
    stated("emissions", emissionsKgCo2.stated, "kg CO₂ a year", emissionsKgCo2),
  ];
  return liveSheet("Summary", rows, [34, 18, 14, 16, 16, 16]);
}
