import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import type { AirLine } from "../view-model";

/** Zones that are shown at once: the others steer well enough not to stand in the way. */
const FIRST = 8;

/** How the zones' air wanders, the widest first and the rest folded away. */
export function AirTable({ lines }: { lines: readonly AirLine[] }) {
  const [first, rest] = [lines.slice(0, FIRST), lines.slice(FIRST)];
  return (
    <>
      <Lines
        caption="Hourly means of zone air in occupied hours of the last year's cooling season. Spread and swing are standard deviations: of those means, and of their change from one hour to the next"
        lines={first}
      />
      {rest.length > 0 ? (
        <Disclosure summary={rest.length === 1 ? "1 more zone" : `${rest.length} more zones`}>
          <Lines caption="The other zones" lines={rest} />
        </Disclosure>
      ) : null}
    </>
  );
}

function Lines({ caption, lines }: { caption: string; lines: readonly AirLine[] }) {
  return (
    <DataTable
      caption={caption}
      rows={lines}
      rowKey={(row) => row.key}
      columns={[
        { key: "zone", head: "Zone", names: true, cell: (row) => row.zone },
        { key: "mean", head: "Mean", align: "number", cell: (row) => row.mean },
        { key: "spread", head: "Spread", align: "number", cell: (row) => row.spread },
        { key: "swing", head: "Swing in an hour", align: "number", cell: (row) => row.swing },
      ]}
    />
  );
}
