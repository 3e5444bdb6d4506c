import { formatFigure } from "@/app/_components/quantity/format-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import type { Proof } from "@/lib/proposals/verification-result";
import { formatTemperature, type TemperatureUnit } from "@/lib/units/format";

type Props = { proofs: readonly Proof[]; temperatureUnit: TemperatureUnit; buildingPath: string };

/** What the data say, quantity by quantity, each with its working. */
export function ProofTable({ proofs, temperatureUnit, buildingPath }: Props) {
  const shown = ({ unit, ...proof }: Proof, of: "before" | "after"): string => {
    const value = proof[of];
    if (value === null) return "";
    return unit === "°C" ? formatTemperature(value, temperatureUnit).value : formatFigure(value, { significant: 4 });
  };
  return (
    <DataTable
      caption="What the data say, quantity by quantity"
      captionHidden
      rows={proofs}
      rowKey={(proof) => proof.id}
      columns={[
        { key: "what", head: "Quantity", names: true, cell: (proof) => proof.label },
        { key: "unit", head: "Unit", cell: ({ unit }) => (unit === "°C" ? `°${temperatureUnit}` : unit) },
        { key: "before", head: "Before", align: "number", cell: (proof) => shown(proof, "before") },
        { key: "after", head: "After", align: "number", cell: (proof) => shown(proof, "after") },
        { key: "verdict", head: "Verdict", cell: (proof) => <strong>{proof.verdict.replace("-", " ")}</strong> },
        { key: "sentence", head: "In words", prose: true, cell: (proof) => proof.sentence },
      ]}
      detail={({ workings }) =>
        workings
          ? {
              summary: "Working",
              content: workings.map((working) => (
                <WorkingSheet key={working.result.symbol} working={working} buildingPath={buildingPath} />
              )),
            }
          : null
      }
    />
  );
}
