import type { Metadata } from "next";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { COST } from "@/lib/services/overcooling/shown";
import { componentLines, whole } from "../overview-view-model";
import { standingNote } from "../standing-note";

export const metadata: Metadata = { title: "Working" };

type Props = { params: Promise<{ buildingId: string }> };

/** The working of every component; the terms of each open on pages of their own, down to the readings. */
export default async function WorkingPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, cost, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const cost = await readKept(ctx, id, COST);
    return { building, cost: cost.result, note: standingNote(ctx, building, { cost }) };
  }, `${path}/working`);
  if (!cost) {
    return (
      <>
        <PageHeading title="Working" />
        <StandingNote note={note} />
      </>
    );
  }
  const { assessment } = cost;
  if (assessment.status !== "ok") {
    return (
      <>
        <PageHeading title="Working" />
        <StandingNote note={note} />
        <EmptyState>
          There is no figure yet, so there is nothing to work out. The overview says what is missing.
        </EmptyState>
      </>
    );
  }
  const { lines, stated, p50 } = componentLines(assessment);
  const sign = currencySign(building.currency);
  return (
    <>
      <StandingNote note={note} />
      <PageHeading
        title="Working"
        lede={`How ${sign}${whole(stated)} a year comes about with every input at its stated value. Inputs are uncertain and their ranges lean upwards, so the most likely total is ${sign}${whole(p50)}.`}
      />
      {lines.map((line) => (
        <Section key={line.id} id={line.id} title={`${line.label}: ${sign}${whole(line.stated)} a year`} wide>
          <WorkingSheet
            working={line.working}
            buildingPath={path}
            further={{ page: `${path}/working/${line.id}`, at: [], levels: 0 }}
          />
        </Section>
      ))}
    </>
  );
}
