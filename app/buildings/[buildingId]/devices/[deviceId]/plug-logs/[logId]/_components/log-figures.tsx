import { Quantity } from "@/app/_components/quantity/quantity";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import type { PlugLogFigures } from "@/lib/electrical/plug-log/plug-log-figures";
import { formatLocal } from "@/lib/time/format";
import type { Working } from "@/lib/working/working";

type Props = {
  figures: PlugLogFigures;
  workings: { energy: Working; outside: Working };
  buildingPath: string;
  timeZone: string;
};

/** The figures of a log as a whole; those of energy open into their working. */
export function LogFigures({ figures, workings, buildingPath, timeZone }: Props) {
  const { longestFullRun, outsideOccupied, energyKwh } = figures;
  const rows = [
    { what: "Energy in the log", value: energyKwh, unit: "kWh", note: "", working: workings.energy },
    {
      what: "Energy outside occupied hours",
      value: outsideOccupied.energyKwh,
      unit: "kWh",
      note: "",
      working: workings.outside,
    },
    { what: "On outside occupied hours", value: outsideOccupied.hours, unit: "h", note: "", working: null },
    {
      what: "Longest run at the highest level",
      value: longestFullRun?.hours ?? 0,
      unit: "h",
      note: longestFullRun?.fromMs ? `from ${formatLocal(longestFullRun.fromMs, timeZone, "date-time")}` : "",
      working: null,
    },
  ];
  return (
    <DataTable
      caption="Figures of the log"
      captionHidden
      rows={rows}
      rowKey={(row) => row.what}
      columns={[
        { key: "what", head: "Figure", names: true, cell: (row) => row.what },
        {
          key: "value",
          head: "Value",
          align: "number",
          cell: (row) => <Quantity value={row.value} unit={row.unit} digits={{ decimals: 2 }} />,
        },
        { key: "note", head: "When", cell: (row) => row.note },
      ]}
      detail={(row) =>
        row.working
          ? { summary: "Working", content: <WorkingSheet working={row.working} buildingPath={buildingPath} /> }
          : null
      }
    />
  );
}
