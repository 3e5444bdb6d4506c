import type { WriteSheet } from "hucre/xlsx";
import type { CaseFinance } from "@/lib/business-case/case-finance";
import type { CaseInput, CaseVariant } from "@/lib/business-case/case-input";
import { type LiveCell, liveSheet, MONEY, strong } from "../live-sheet";

export function variantsSheet({ variants, building }: CaseInput): WriteSheet {
  const heads = [
    "Variant",
    "Proposed",
    ...["P10", "P50", "P90"].map((each) => `Saving ${each} (${building.currency} a year)`),
    "Hours outside comfort (share)",
    "Cold reports a year",
    "Hot reports a year",
  ];
  const rows = variants.map((each): LiveCell[] => [
    each.name,
    each.proposed ? "yes" : "no",
    ...[each.savingPerYear.p10, each.savingPerYear.p50, each.savingPerYear.p90].map((value) => ({
      value,
      format: MONEY,
    })),
    each.outsideComfort,
    reportsCell(each, each.coldReportsPerYear),
    reportsCell(each, each.hotReportsPerYear),
  ]);
  return liveSheet("Variants", [heads.map(strong), ...rows], [28, 10, 22, 22, 22, 18, 14, 14]);
}

const reportsCell = ({ reportsWithheld }: CaseVariant, perYear: number | null): LiveCell =>
  perYear ?? (reportsWithheld ? "withheld: too few people" : null);

/** Swings of the saving and of the net present value, with their widths as formulas. */
export function sensitivitySheet({ tornado, building }: CaseInput, { policy }: CaseFinance): WriteSheet {
  const heads = ["Figure", "Input", "At its low end", "At its high end", `Swing (${building.currency})`];
  const lines = [
    ...tornado.map((line) => ({ figure: "saving in the first year", ...line })),
    ...policy.map((line) => ({ figure: "net present value", ...line })),
  ];
  const rows = lines.map(({ figure, label, lowTotal, highTotal }, at): LiveCell[] => [
    figure,
    label,
    { value: lowTotal, format: MONEY },
    { value: highTotal, format: MONEY },
    { formula: `ABS(D${at + 2}-C${at + 2})`, value: Math.abs(highTotal - lowTotal), format: MONEY },
  ]);
  return liveSheet("Sensitivity", [heads.map(strong), ...rows], [26, 60, 16, 16, 16]);
}

export function assumptionsSheet({ assumptions }: CaseInput): WriteSheet {
  const heads = ["Assumption", "Value", "Low", "High", "Unit", "Origin", "Source"];
  const rows = assumptions.map(({ label, value, low, high, unit, origin, source }) => [
    label,
    value,
    low,
    high,
    unit,
    origin,
    source,
  ]);
  return liveSheet("Assumptions", [heads.map(strong), ...rows], [60, 12, 12, 12, 14, 10, 80]);
}
