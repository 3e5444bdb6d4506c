import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { removeBillAction } from "../actions";
import type { BillLine } from "../view-model";

/** The building's bills, each of which can be taken out: one with wrong days keeps others from coming in. */
export function BillTable({
  lines,
  currency,
  buildingId,
}: {
  lines: readonly BillLine[];
  currency: string;
  buildingId: number;
}) {
  return (
    <DataTable
      caption="Electricity bills"
      captionHidden
      rows={lines}
      rowKey={(row) => row.id}
      columns={[
        { key: "from", head: "First day", names: true, cell: (row) => row.from },
        { key: "to", head: "Last day", cell: (row) => row.to },
        { key: "days", head: "Days", align: "number", cell: (row) => row.days },
        { key: "energy", head: "Energy", unit: "kWh", align: "number", cell: (row) => row.energy },
        { key: "demand", head: "Billed demand", unit: "kW", align: "number", cell: (row) => row.demand },
        { key: "charges", head: "Charges", unit: currency, align: "number", cell: (row) => row.charges },
        {
          key: "remove",
          head: "Remove",
          cell: (row) => (
            <form action={removeBillAction}>
              <input type="hidden" name="buildingId" value={buildingId} />
              <input type="hidden" name="billId" value={row.id} />
              <Button type="submit" aria-label={`Remove the bill of ${row.from}`}>
                Remove
              </Button>
            </form>
          ),
        },
      ]}
    />
  );
}
