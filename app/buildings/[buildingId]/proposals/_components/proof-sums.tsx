import { formatFigure, prefixed, spanWords } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import type { ProofSum } from "@/lib/proposals/verification-result";

type Props = { sums: readonly ProofSum[]; currency: string; buildingPath: string };

/** What a proof comes to in energy and money over its days, beside what was expected of them. Nothing without a meter. */
export function ProofSums({ sums, currency, buildingPath }: Props) {
  if (sums.length === 0) return null;
  const prefixOf = (unit: string): string => (unit === currency ? currencySign(currency) : "");
  const digits = (value: number): string => formatFigure(value, { significant: 3 });
  return (
    <DataTable
      caption="Over the days of the window after"
      rows={sums}
      rowKey={({ id }) => id}
      columns={[
        {
          key: "what",
          head: "Sum",
          names: true,
          cell: ({ label }) => `${label.slice(0, 1).toUpperCase()}${label.slice(1)}`,
        },
        {
          key: "value",
          head: "Most likely",
          align: "number",
          cell: ({ value, unit }) => prefixed(digits(value), prefixOf(unit)),
        },
        {
          key: "range",
          head: "90 % interval",
          align: "number",
          cell: ({ low, high, unit }) =>
            low === null || high === null ? "" : spanWords(digits(low), digits(high), prefixOf(unit)),
        },
        { key: "unit", head: "Unit", cell: ({ unit }) => unit },
      ]}
      detail={({ working }) => ({
        summary: "Working",
        content: <WorkingSheet working={working} buildingPath={buildingPath} />,
      })}
    />
  );
}
