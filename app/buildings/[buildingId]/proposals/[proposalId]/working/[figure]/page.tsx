import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { stepsTo } from "@/app/_components/quantity/working-steps";
import { WorkingTrail } from "@/app/_components/quantity/working-trail";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { readAs } from "@/app/_server/read";
import { readIssued } from "@/lib/services/proposals/decide";
import { WORKED_FIGURES } from "../../../_components/worked-figures";

export const metadata: Metadata = { title: "Working" };

/** Levels of terms written out on one page. */
const LEVELS = 1;

type Props = {
  params: Promise<{ buildingId: string; proposalId: string; figure: string }>;
  searchParams: Promise<{ at?: string }>;
};

/** The working of a figure as it was issued ("0-saving": of the first variant), or that of any term inside it. */
export default async function IssuedWorkingPage({ params, searchParams }: Props) {
  const { buildingId, proposalId, figure } = await params;
  const { at } = await searchParams;
  const proposal = `/buildings/${Number(buildingId)}/proposals/${Number(proposalId)}`;
  const page = `${proposal}/working/${figure}`;
  const copy = await readAs((ctx) => readIssued(ctx, Number(buildingId), Number(proposalId)), page);
  const [place, name] = figure.split("-");
  const variant = copy?.variants[Number(place)];
  const figureOf = Object.hasOwn(WORKED_FIGURES, name ?? "") ? WORKED_FIGURES[name ?? ""] : undefined;
  const working = variant && figureOf?.(variant.picture)?.working;
  const steps = working ? stepsTo(working, at) : null;
  const last = steps?.at(-1);
  if (!copy || !variant || !steps || !last) notFound();
  return (
    <>
      <PageHeading
        title={`Working of ${last.label}`}
        lede={`Of “${variant.name}” in the proposal “${copy.proposal.title}”, as it was issued.`}
      />
      <WorkingTrail root={{ label: copy.proposal.title, href: proposal }} steps={steps} page={page} />
      <Section plain>
        <WorkingSheet
          working={last.working}
          buildingPath={`/buildings/${Number(buildingId)}`}
          further={{ page, at: last.at, levels: LEVELS }}
        />
      </Section>
    </>
  );
}
