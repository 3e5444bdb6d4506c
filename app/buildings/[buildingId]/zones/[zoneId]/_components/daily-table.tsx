import { DataTable } from "@/app/_components/ui/data-table";
import type { Building } from "@/lib/services/buildings/find";
import type { ZoneHistory } from "@/lib/services/zones/history";
import { formatLocalDate } from "@/lib/time/format";
import { dailyRows } from "../view-model";

/** The numbers of the picture by day. */
export function DailyTable({ history, building }: { history: ZoneHistory; building: Building }) {
  const unit = building.temperatureUnit === "F" ? "°F" : "°C";
  return (
    <DataTable
      caption="Zone air temperature and setpoints by day"
      rows={dailyRows(history, building)}
      rowKey={(row) => row.date}
      columns={[
        { key: "date", head: "Day", names: true, cell: (row) => formatLocalDate(row.date) },
        { key: "low", head: "Lowest", unit, align: "number", cell: (row) => row.lowest },
        { key: "high", head: "Highest", unit, align: "number", cell: (row) => row.highest },
        { key: "csp", head: "Cooling setpoint, lowest", unit, align: "number", cell: (row) => row.coolingSetpoint },
        { key: "hsp", head: "Heating setpoint, highest", unit, align: "number", cell: (row) => row.heatingSetpoint },
        { key: "reports", head: "Reports", align: "number", cell: (row) => row.reports },
      ]}
    />
  );
}
