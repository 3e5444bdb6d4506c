import { currencySign } from "@/app/_components/quantity/money-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import { type componentLines, whole } from "../overview-view-model";

type Props = { components: ReturnType<typeof componentLines>; currency: string; buildingPath: string };

/** Components of the cost; each row opens into its working, and the rows add up. */
export function ComponentTable({ components, currency, buildingPath }: Props) {
  const unit = currencySign(currency).trim();
  return (
    <DataTable
      caption="Cost of overcooling by component, a year. Shares of the most likely figure add up to it; stated values can be recomputed from the working of each row."
      rows={components.lines}
      rowKey={(line) => line.id}
      columns={[
        { key: "label", head: "Component", names: true, cell: (line) => line.label, total: "Together" },
        { key: "electric", head: "Electricity", unit: "kWh", align: "number", cell: (line) => line.electricKwh },
        { key: "heat", head: "Heat", unit: "kWh", align: "number", cell: (line) => line.heatKwh },
        {
          key: "stated",
          head: "At stated values",
          unit,
          align: "number",
          cell: (line) => whole(line.stated),
          total: whole(components.stated),
        },
        {
          key: "share",
          head: "Of the most likely",
          unit,
          align: "number",
          cell: (line) => whole(line.contribution),
          total: whole(components.p50),
        },
        { key: "p10", head: "P10", unit, align: "number", cell: (line) => whole(line.p10) },
        { key: "p90", head: "P90", unit, align: "number", cell: (line) => whole(line.p90) },
      ]}
      detail={(line) => ({
        summary: "Working",
        content: (
          <WorkingSheet
            working={line.working}
            buildingPath={buildingPath}
            further={{ page: `${buildingPath}/working/${line.id}`, at: [], levels: 0 }}
          />
        ),
      })}
    />
  );
}
