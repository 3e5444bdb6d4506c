import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import type { PlugState } from "@/lib/electrical/plug-log/plug-log-figures";
import { formatNumber } from "@/lib/units/format";
import type { Working } from "@/lib/working/working";

type Props = { states: readonly PlugState[]; workings: readonly Working[]; buildingPath: string };

const nameOf = ({ setting, powerW }: PlugState): string =>
  setting ? setting.name.replaceAll("-", " ") : powerW < 3 ? "off" : "not on record";

/** The levels of a log from off upwards beside the watts on record, each with the working of its energy. */
export function LevelTable({ states, workings, buildingPath }: Props) {
  const rows = states.map((state, at) => ({ ...state, at, name: nameOf(state) })).filter((state) => state.hours > 0);
  const hours = (value: number): string => formatNumber(value, { decimals: 2 });
  return (
    <DataTable
      caption="Levels of power"
      captionHidden
      rows={rows}
      rowKey={(row) => row.at}
      columns={[
        { key: "name", head: "Setting", names: true, cell: (row) => row.name, total: "Together" },
        {
          key: "w",
          head: "Logged",
          unit: "W",
          align: "number",
          cell: (row) => formatNumber(row.powerW, { decimals: 1 }),
        },
        {
          key: "record",
          head: "On record",
          unit: "W",
          align: "number",
          cell: (row) => (row.setting ? formatNumber(row.setting.onRecordW, { decimals: 1 }) : ""),
        },
        { key: "basis", head: "Known by", cell: (row) => row.setting?.basis.replaceAll("-", " ") ?? "" },
        {
          key: "hours",
          head: "At this level",
          unit: "h",
          align: "number",
          cell: (row) => hours(row.hours),
          total: hours(rows.reduce((sum, row) => sum + row.hours, 0)),
        },
        {
          key: "selected",
          head: "Selected",
          unit: "h",
          align: "number",
          cell: (row) => hours(row.selectedHours),
          total: hours(rows.reduce((sum, row) => sum + row.selectedHours, 0)),
        },
        { key: "duty", head: "Duty", align: "number", cell: (row) => formatNumber(row.dutyFraction, { decimals: 2 }) },
        { key: "run", head: "Longest run", unit: "h", align: "number", cell: (row) => hours(row.longestRunHours) },
        {
          key: "kwh",
          head: "Energy",
          unit: "kWh",
          align: "number",
          cell: (row) => formatNumber(row.energyKwh, { decimals: 3 }),
          total: formatNumber(
            rows.reduce((sum, row) => sum + row.energyKwh, 0),
            { decimals: 3 },
          ),
        },
      ]}
      detail={(row) => {
        const working = workings[row.at];
        return working
          ? {
              summary: `Working of ${row.name}`,
              content: <WorkingSheet working={working} buildingPath={buildingPath} />,
            }
          : null;
      }}
    />
  );
}
