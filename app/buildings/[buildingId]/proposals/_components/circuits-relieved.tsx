import Link from "next/link";
import { formatFigure } from "@/app/_components/quantity/format-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import { CIRCUIT_OUTCOMES, type CircuitRelief } from "@/lib/proposals/live-circuit";
import { circuitsSentence } from "../circuit-words";
import { OpenedContent } from "./opened-content";

type Props = {
  circuits: readonly CircuitRelief[];
  name: string;
  buildingPath: string;
  /** Of an issued variant, whose figures stand still: workings are there without script. */
  isIssued?: boolean;
};

const amperes = (value: number): string => formatFigure(value, { decimals: 1 });

/** Circuits that heaters of the proposal's zones hang on: load today, as expected and at best, against their planning limit. */
export function CircuitsRelieved({ circuits, name, buildingPath, isIssued = false }: Props) {
  if (circuits.length === 0) return null;
  return (
    <div>
      <p>{circuitsSentence(circuits, name)}</p>
      <DataTable
        caption={`Circuits with heaters of these zones, ${name}`}
        rows={circuits}
        rowKey={({ circuitId }) => circuitId}
        columns={[
          {
            key: "circuit",
            head: "Circuit",
            names: true,
            cell: ({ circuitId, name: circuit }) => (
              <Link href={`${buildingPath}/devices/circuits/${circuitId}`}>{circuit}</Link>
            ),
          },
          { key: "heaters", head: "Heaters", cell: ({ heaters }) => heaters.join(", ") },
          { key: "today", head: "Today", unit: "A", align: "number", cell: ({ todayA }) => amperes(todayA) },
          {
            key: "expected",
            head: "Expected",
            unit: "A",
            align: "number",
            cell: ({ expectedA }) => amperes(expectedA),
          },
          { key: "best", head: "All gone", unit: "A", align: "number", cell: ({ allGoneA }) => amperes(allGoneA) },
          {
            key: "limit",
            head: "Planning limit",
            unit: "A",
            align: "number",
            cell: ({ limitA }) => (limitA === null ? "not known" : amperes(limitA)),
          },
          { key: "outcome", head: "What comes of it", cell: ({ outcome }) => CIRCUIT_OUTCOMES[outcome] },
        ]}
        detail={({ working }) => {
          const sheet = <WorkingSheet working={working} buildingPath={buildingPath} />;
          return { summary: "Working", content: isIssued ? sheet : <OpenedContent>{sheet}</OpenedContent> };
        }}
      />
    </div>
  );
}
