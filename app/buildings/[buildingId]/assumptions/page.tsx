import type { Metadata } from "next";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { DataTable } from "@/app/_components/ui/data-table";
import { readAs } from "@/app/_server/read";
import { readAssumptions } from "@/lib/services/assumptions/resolve";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { meterAssumptions } from "@/lib/services/meter/assumptions-used";
import { COST } from "@/lib/services/overcooling/shown";
import { standingNote } from "../standing-note";
import { AssumptionDetail } from "./_components/assumption-detail";
import { sensitivityOf, swingFigure } from "./effect";
import { assumptionsLede, figure, rangeFigure, sourceWords, usedFirst } from "./view-model";

export const metadata: Metadata = { title: "Assumptions" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function AssumptionsPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const { building, assumptions, assessment, byMeter, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const cost = await readKept(ctx, id, COST);
    const note = standingNote(ctx, building, { cost });
    const byMeter = meterAssumptions(ctx, id);
    return { building, assumptions: readAssumptions(ctx, id), assessment: cost.result?.assessment, byMeter, note };
  }, `/buildings/${id}/assumptions`);
  const assessed = assessment?.status === "ok" ? assessment : null;
  const used = new Set([...(assessed?.assumptionIds ?? []), ...byMeter]);
  const sign = currencySign(building.currency);
  const groups = usedFirst(assumptions, used);
  return (
    <>
      <PageHeading title="Assumptions" lede={assessment ? assumptionsLede(assumptions, used) : undefined} />
      <StandingNote note={note} hasFields />
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
              {
                key: "swing",
                head: "Moves the total by",
                unit: sign.trim(),
                align: "number",
                cell: (row) => swingFigure(assessed, row.id),
              },
              { key: "origin", head: "Is", cell: (row) => (row.origin === "entered" ? "your own" : "default") },
              { key: "source", head: "Source", cell: (row) => sourceWords(row) },
            ]}
            detail={(row) => ({
              summary: row.origin === "entered" ? "Change or withdraw" : "Give your own",
              content: (
                <AssumptionDetail
                  buildingId={id}
                  assumption={row}
                  timeZone={building.timeZone}
                  sensitivity={assessed && sensitivityOf(assessed, row)}
                  sign={sign}
                />
              ),
            })}
          />
        </Section>
      ))}
    </>
  );
}
