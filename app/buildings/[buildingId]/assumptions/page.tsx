import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { readAs } from "@/app/_server/read";
import { readAssumptions } from "@/lib/services/assumptions/resolve";
import { readBuilding } from "@/lib/services/buildings/find";
import { readCostOfOvercooling } from "@/lib/services/overcooling/assess";
import { AssumptionDetail } from "./_components/assumption-detail";
import { assumptionsLede, figure, rangeFigure, sourceWords, usedFirst } from "./view-model";

export const metadata: Metadata = { title: "Assumptions" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function AssumptionsPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const { building, assumptions, cost } = await readAs(
    async (ctx) => ({
      building: readBuilding(ctx, id),
      assumptions: readAssumptions(ctx, id),
      cost: await readCostOfOvercooling(ctx, id),
    }),
    `/buildings/${id}/assumptions`,
  );
  const used = new Set(cost.assessment.status === "ok" ? cost.assessment.assumptionIds : []);
  const groups = usedFirst(assumptions, used);
  return (
    <>
      <PageHeading title="Assumptions" lede={assumptionsLede(assumptions, used)} />
      {groups.map((group) => (
        <Section key={group.id} id={group.id} title={group.title} wide>
          <DataTable
            caption={group.title}
            captionHidden
            rows={group.assumptions}
            rowKey={(row) => row.id}
            columns={[
              {
                key: "label",
                head: "Assumption",
                names: true,
                cell: (row) => <span id={row.id}>{row.label}</span>,
              },
              { key: "value", head: "Value", align: "number", cell: (row) => figure(row.value) },
              { key: "range", head: "Range", align: "number", cell: (row) => rangeFigure(row) },
              { key: "unit", head: "Unit", cell: (row) => row.unit },
              { key: "origin", head: "Is", cell: (row) => (row.origin === "entered" ? "your own" : "default") },
              { key: "source", head: "Source", cell: (row) => sourceWords(row) },
            ]}
            detail={(row) => ({
              summary: row.origin === "entered" ? "Change or withdraw" : "Give your own",
              content: <AssumptionDetail buildingId={id} assumption={row} timeZone={building.timeZone} />,
            })}
          />
        </Section>
      ))}
    </>
  );
}
