import { DataTable } from "@/app/_components/ui/data-table";
import type { TemperatureUnit } from "@/lib/units/format";
import type { CandidateLine, ModelLine, ReadingLine } from "../view-model";

/** Values of the models, plus and minus one standard error. */
export function ModelTable({ lines, unit }: { lines: readonly ModelLine[]; unit: TemperatureUnit }) {
  const slopeUnit = unit === "F" ? "kWh/d·°F" : "kWh/d·K";
  return (
    <DataTable
      caption="Models by day type, each value plus and minus one standard error"
      rows={lines}
      rowKey={(row) => row.key}
      columns={[
        { key: "type", head: "Days", names: true, cell: (row) => row.type },
        { key: "kind", head: "Model", cell: (row) => row.kind },
        { key: "base", head: "Base load", unit: "kWh/d", align: "number", cell: (row) => row.base },
        { key: "cs", head: "Cooling slope", unit: slopeUnit, align: "number", cell: (row) => row.coolingSlope },
        { key: "cc", head: "Cooling from", unit: `°${unit}`, align: "number", cell: (row) => row.coolingChange },
        { key: "hs", head: "Heating slope", unit: slopeUnit, align: "number", cell: (row) => row.heatingSlope },
        { key: "hc", head: "Heating below", unit: `°${unit}`, align: "number", cell: (row) => row.heatingChange },
      ]}
    />
  );
}

/** Every model tried with its statistics, and why it was or was not taken. */
export function CandidateTable({ lines }: { lines: readonly CandidateLine[] }) {
  return (
    <DataTable
      caption="Models tried"
      captionHidden
      rows={lines}
      rowKey={(row) => row.key}
      columns={[
        { key: "type", head: "Days", cell: (row) => row.type },
        { key: "kind", head: "Model", names: true, cell: (row) => row.kind },
        { key: "n", head: "Readings", align: "number", cell: (row) => row.readings },
        { key: "adj", head: "Adjusted R²", align: "number", cell: (row) => row.adjustedR2 },
        { key: "r2", head: "R²", align: "number", cell: (row) => row.r2 },
        { key: "cv", head: "CV(RMSE)", unit: "%", align: "number", cell: (row) => row.cvRmse },
        { key: "nmbe", head: "NMBE", unit: "%", align: "number", cell: (row) => row.nmbe },
        { key: "rho", head: "Autocorrelation", align: "number", cell: (row) => row.rho },
        { key: "eff", head: "Independent readings", align: "number", cell: (row) => row.effective },
        { key: "verdict", head: "Verdict", cell: (row) => row.verdict },
      ]}
    />
  );
}

/** The readings of the picture. */
export function ReadingTable({ lines, unit }: { lines: readonly ReadingLine[]; unit: TemperatureUnit }) {
  return (
    <DataTable
      caption="Energy and mean outdoor air temperature"
      captionHidden
      rows={lines}
      rowKey={(row) => row.key}
      columns={[
        { key: "date", head: "From", names: true, cell: (row) => row.date },
        { key: "type", head: "Days", cell: (row) => row.type },
        { key: "outdoor", head: "Outdoor air", unit: `°${unit}`, align: "number", cell: (row) => row.outdoor },
        { key: "energy", head: "Energy", unit: "kWh/d", align: "number", cell: (row) => row.energy },
      ]}
    />
  );
}
