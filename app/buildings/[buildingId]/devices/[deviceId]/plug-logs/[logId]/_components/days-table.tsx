import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import type { PlugDay } from "@/lib/electrical/plug-log/plug-log-figures";
import { formatLocalDate } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";

/** The days that a season rests on. */
export function DaysTable({ days }: { days: readonly PlugDay[] }) {
  return (
    <Disclosure summary={`${days.length} ${days.length === 1 ? "day" : "days"} of the log`}>
      <DataTable
        caption="Days"
        captionHidden
        rows={days}
        rowKey={(day) => day.date}
        columns={[
          { key: "date", head: "Day", names: true, cell: (day) => formatLocalDate(day.date) },
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
      />
    </Disclosure>
  );
}
