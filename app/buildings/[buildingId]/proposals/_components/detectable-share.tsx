import type { ReactNode } from "react";
import { Quantity } from "@/app/_components/quantity/quantity";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { DataTable } from "@/app/_components/ui/data-table";
import type { Detectability } from "@/lib/proposals/proof/energy-proof";
import type { Working } from "@/lib/working/working";
import { detectabilitySentence } from "../change-words";

type Props = { meter: { daysAfter: number; expected: Working; found: Detectability }; buildingPath: string };
type Line = { label: string; value: ReactNode; working: Working };

/** What the meter can show before anyone waits, beside what is expected of a day. */
export function DetectableShare({ meter, buildingPath }: Props) {
  const { expected, found } = meter;
  const lines: Line[] =
    found.status === "ok"
      ? [
          {
            label: "Least share of an occupied day's electricity that can be shown",
            value: <Quantity value={100 * found.leastFraction} unit="%" digits={{ decimals: 1 }} />,
            working: found.working,
          },
          {
            label: "Expected of an occupied day, as issued",
            value: <Quantity value={expected.result.value} unit="kWh" digits={{ significant: 3 }} />,
            working: expected,
          },
        ]
      : [];
  return (
    <>
      <p>{detectabilitySentence(meter)}</p>
      {lines.length > 0 ? (
        <DataTable
          caption="What the meter can show, and what is expected"
          captionHidden
          rows={lines}
          rowKey={({ label }) => label}
          columns={[
            { key: "what", head: "Before the wait", names: true, cell: ({ label }) => label },
            { key: "value", head: "Figure", align: "number", cell: ({ value }) => value },
          ]}
          detail={({ working }) => ({
            summary: "Working",
            content: <WorkingSheet working={working} buildingPath={buildingPath} />,
          })}
        />
      ) : null}
    </>
  );
}
