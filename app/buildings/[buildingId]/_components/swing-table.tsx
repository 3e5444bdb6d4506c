import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { DataTable } from "@/app/_components/ui/data-table";
import { type Assessed, whole } from "../overview-view-model";

type Props = { assessed: Assessed; currency: string; buildingPath: string };

/** The total with one input at its lowest and at its highest, all others as stated: widest first. */
export function SwingTable({ assessed, currency, buildingPath }: Props) {
  const unit = currencySign(currency).trim();
  return (
    <DataTable
      caption="Total a year when one input stands at the end of its range and all others at their stated values"
      rows={assessed.tornado.slice(0, 8)}
      rowKey={(row) => row.id}
      columns={[
        {
          key: "input",
          head: "Input",
          names: true,
          cell: (row) =>
            row.assumptionId ? (
              <Link href={`${buildingPath}/assumptions#${encodeURIComponent(row.assumptionId)}`}>{row.label}</Link>
            ) : (
              row.label
            ),
        },
        { key: "low", head: "At its lowest", unit, align: "number", cell: (row) => whole(row.lowTotal) },
        { key: "high", head: "At its highest", unit, align: "number", cell: (row) => whole(row.highTotal) },
        {
          key: "swing",
          head: "Swing",
          unit,
          align: "number",
          cell: (row) => whole(Math.abs(row.highTotal - row.lowTotal)),
        },
      ]}
      empty={<p>No input has a range.</p>}
    />
  );
}
