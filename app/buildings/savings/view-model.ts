import { rangeFigures, spanWords } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import type { RollUp, RollUpCell, RollUpStage, RollUpTotal } from "@/lib/business-case/roll-up";
import { counted } from "@/lib/units/counted";
import type { Range80 } from "@/lib/working/working";

/** "$1,200–3,400 (2,300)": the range with its middle in brackets. */
export function rangeInBrackets(range: Range80, prefix = ""): string {
  const { low, middle, high } = rangeFigures(range);
  return `${spanWords(low, high, prefix)} (${middle})`;
}

export const cellWords = (cell: RollUpCell, currency: string): string =>
  cell === null ? "" : rangeInBrackets(cell.range, currencySign(currency));

export const totalWords = (total: RollUpTotal, stage: RollUpStage, prefix = ""): string => {
  const cell = total[stage];
  return cell === null ? "" : rangeInBrackets(cell.range.together, prefix);
};

/** The other end of what is not known: buildings that share nothing. Only where a stage has more than one building. */
export function apartWords({ rows, total, currency }: RollUp["currencies"][number]): string[] {
  const stages: [RollUpStage, string][] = [
    ["proposed", "Proposed"],
    ["approved", "Approved"],
    ["verified", "Verified"],
  ];
  return stages.flatMap(([stage, name]) => {
    const cell = total[stage];
    const buildings = rows.filter((row) => row.stages[stage] !== null).length;
    if (cell === null || buildings < 2) return [];
    return [
      `${name}, ${counted(cell.count, "proposal")} in ${buildings} buildings: ${rangeInBrackets(cell.range.apart, currencySign(currency))} if the buildings had no assumption in common.`,
    ];
  });
}

export const overlapWords = ({ buildingName, first, second, zones }: RollUp["overlaps"][number]): string =>
  first === second
    ? `${buildingName}: two proposals named "${first}" touch ${counted(zones, "zone")} in common; their savings may be counted twice.`
    : `${buildingName}: "${first}" and "${second}" touch ${counted(zones, "zone")} in common; their savings may be counted twice.`;
