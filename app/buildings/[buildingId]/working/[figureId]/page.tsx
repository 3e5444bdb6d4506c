import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { stepsTo } from "@/app/_components/quantity/working-steps";
import { WorkingTrail } from "@/app/_components/quantity/working-trail";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { COST, FIGURE_WORKING, isFigure } from "@/lib/services/overcooling/shown";
import { standingNote } from "../../standing-note";

export const metadata: Metadata = { title: "Working" };

/** Levels of terms written out on one page. */
const LEVELS = 2;

type Props = {
  params: Promise<{ buildingId: string; figureId: string }>;
  searchParams: Promise<{ at?: string }>;
};

/** The working of a component, a zone or a total, or the working of any term inside it, with the way back to the whole. */
export default async function FigureWorkingPage({ params, searchParams }: Props) {
  const { buildingId, figureId } = await params;
  const { at } = await searchParams;
  const path = `/buildings/${Number(buildingId)}`;
  const page = `${path}/working/${figureId}`;
  const { working, note } = await readAs(
    async (ctx) => {
      const building = readBuilding(ctx, Number(buildingId));
      const cost = await readKept(ctx, building.id, COST);
      if (!cost.result) return { working: null, note: standingNote(ctx, building, { cost }) };
      if (!isFigure(cost.result.assessment, figureId)) notFound();
      const figure = await readKept(ctx, building.id, FIGURE_WORKING, figureId);
      const note = standingNote(ctx, building, { [`${FIGURE_WORKING.name}/${figureId}`]: figure });
      return { working: figure.result?.working ?? null, note };
    },
    at ? `${page}?at=${at}` : page,
  );
  if (!working && note) {
    return (
      <>
        <PageHeading title="Working" />
        <StandingNote note={note} />
      </>
    );
  }
  const steps = working ? stepsTo(working, at) : null;
  const last = steps?.at(-1);
  if (!steps || !last) notFound();
  return (
    <>
      <StandingNote note={note} />
      <PageHeading title={`Working of ${last.label}`} />
      <WorkingTrail root={{ label: "All components", href: `${path}/working` }} steps={steps} page={page} />
      <Section plain>
        <WorkingSheet
          working={last.working}
          buildingPath={path}
          further={{ page, at: last.at, levels: last.at.length === 0 ? 0 : LEVELS }}
        />
      </Section>
    </>
  );
}
