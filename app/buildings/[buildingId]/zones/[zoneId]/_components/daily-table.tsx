import { DataTable } from "@/app/_components/ui/data-table";
import type { Building } from "@/lib/services/buildings/find";
import type { ZoneDay } from "@/lib/services/zones/days";
import type { ZoneHistory } from "@/lib/services/zones/history";
import { formatLocalDate } from "@/lib/time/format";
import { dailyRows } from "../view-model";

type Props = { history: ZoneHistory; days: readonly ZoneDay[]; building: Building };

/** The days of the picture in numbers; hours are the occupied ones of the cooling season, by what the box did. */
export function DailyTable({ history, days, building }: Props) {
  const unit = building.temperatureUnit === "F" ? "°F" : "°C";
  return (
    <DataTable
      caption="Zone air temperature, setpoints and occupied cooling-season hours by day"
      rows={dailyRows(history, days, building)}
      rowKey={(row) => row.date}
      columns={[
        { key: "date", head: "Day", names: true, cell: (row) => formatLocalDate(row.date) },
        { key: "mean", head: "Mean", unit, align: "number", cell: (row) => row.mean },
        { key: "low", head: "Lowest", unit, align: "number", cell: (row) => row.lowest },
        { key: "high", head: "Highest", unit, align: "number", cell: (row) => row.highest },
        { key: "csp", head: "Cooling setpoint, lowest", unit, align: "number", cell: (row) => row.coolingSetpoint },
        { key: "hsp", head: "Heating setpoint, highest", unit, align: "number", cell: (row) => row.heatingSetpoint },
        { key: "cooling", head: "Cooling", unit: "h", align: "number", cell: (row) => row.coolingHours },
        { key: "deadband", head: "At minimum airflow", unit: "h", align: "number", cell: (row) => row.deadbandHours },
        { key: "reheat", head: "Reheat", unit: "h", align: "number", cell: (row) => row.reheatHours },
        { key: "other", head: "Fault or undetermined", unit: "h", align: "number", cell: (row) => row.otherHours },
        { key: "below", head: "Below target", unit: "K·h", align: "number", cell: (row) => row.belowTargetKh },
        { key: "reports", head: "Reports", align: "number", cell: (row) => row.reports },
      ]}
    />
  );
}
