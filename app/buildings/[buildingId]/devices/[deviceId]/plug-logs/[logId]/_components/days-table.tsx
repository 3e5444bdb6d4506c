import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import type { PlugDay } from "@/lib/electrical/plug-log/plug-log-figures";
import { formatLocalDate } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";
import type { Working } from "@/lib/working/working";

type Props = { days: readonly PlugDay[]; workings: readonly Working[]; buildingPath: string };

/** The days that a season rests on; without their dates once the raw readings are deleted. */
export function DaysTable({ days, workings, buildingPath }: Props) {
  return (
    <Disclosure summary={`${days.length} ${days.length === 1 ? "day" : "days"} of the log`}>
      <DataTable
        caption="Days"
        captionHidden
        rows={days.map((day, at) => ({ ...day, at }))}
        rowKey={(day) => day.at}
        columns={[
          {
            key: "date",
            head: "Day",
            names: true,
            cell: (day) => (day.date === null ? `day ${day.at + 1}` : formatLocalDate(day.date)),
          },
          { key: "kind", head: "Kind", cell: (day) => (day.isOccupied ? "occupied" : "other") },
          {
            key: "hours",
            head: "Logged",
            unit: "h",
            align: "number",
            cell: (day) => formatNumber(day.loggedHours, { decimals: 1 }),
          },
          {
            key: "kwh",
            head: "Energy",
            unit: "kWh",
            align: "number",
            cell: (day) => formatNumber(day.energyKwh, { decimals: 3 }),
            total: formatNumber(
              days.reduce((sum, day) => sum + day.energyKwh, 0),
              { decimals: 3 },
            ),
          },
        ]}
        detail={(day) => {
          const working = workings[day.at];
          return working
            ? { summary: "Working", content: <WorkingSheet working={working} buildingPath={buildingPath} /> }
            : null;
        }}
      />
    </Disclosure>
  );
}
