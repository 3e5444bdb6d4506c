import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { stepsTo } from "@/app/_components/quantity/working-steps";
import { WorkingTrail } from "@/app/_components/quantity/working-trail";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { readAs } from "@/app/_server/read";
import { readBothSides } from "@/lib/services/both-sides/expect";
import { sideWorkings } from "@/lib/services/both-sides/workings";
import { readBuilding } from "@/lib/services/buildings/find";
import { standingNote } from "../../../../standing-note";
import { FIGURE_WORDS, figureOf, shiftWords } from "../../view-model";

export const metadata: Metadata = { title: "Working of both sides" };

/** Levels of terms written out on one page. */
const LEVELS = 2;

type Props = {
  params: Promise<{ buildingId: string; figureId: string }>;
  searchParams: Promise<{ at?: string }>;
};

/** The working of one figure at one step of the zone air, or of any term inside it, with the way back. */
export default async function SideWorkingPage({ params, searchParams }: Props) {
  const { buildingId, figureId } = await params;
  const { at } = await searchParams;
  const path = `/buildings/${Number(buildingId)}`;
  const root = `${path}/comfort-reports/both-sides`;
  const page = `${root}/working/${figureId}`;
  const { building, sides, note } = await readAs(
    async (ctx) => {
      const building = readBuilding(ctx, Number(buildingId));
      const { sides, kept } = await readBothSides(ctx, building.id);
      return { building, sides, note: standingNote(ctx, building, { "both-sides": kept }) };
    },
    at ? `${page}?at=${at}` : page,
  );
  const named = sides && figureOf(figureId, sides.steps);
  if (!sides || !named) {
    if (!note) notFound();
    return (
      <>
        <PageHeading title="Working" />
        <StandingNote note={note} />
      </>
    );
  }
  const working = sideWorkings(sides)[named.index]?.[named.figure];
  const steps = working ? stepsTo(working, at) : null;
  const last = steps?.at(-1);
  if (!steps || !last) notFound();
  const step = shiftWords(sides.steps[named.index]?.shiftK ?? 0, building.temperatureUnit);
  return (
    <>
      <StandingNote note={note} />
      <PageHeading title={`${FIGURE_WORDS[named.figure]}, zone air ${step}: working of ${last.label}`} />
      <WorkingTrail root={{ label: "Both sides of a temperature", href: root }} steps={steps} page={page} />
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
