import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { PROPOSAL_GROUND, readGround } from "@/lib/services/proposals/ground";
import { standingNote } from "../../standing-note";
import { ProposalEditor } from "../_components/proposal-editor";
import { saveProposalAction } from "../actions";
import { beginningValues } from "../view-model";

export const metadata: Metadata = { title: "New proposal" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<{ zones?: string }> };

/** A proposal as the diagnosis would have it, or of the zones that `?zones=3,8` names. */
export default async function NewProposalPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const { zones } = await searchParams;
  const only = zones ? zones.split(",").map(Number) : null;
  const path = `/buildings/${id}`;
  const { building, ground, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const kept = await readGround(ctx, id);
    return { building, ground: kept.result, note: standingNote(ctx, building, { [PROPOSAL_GROUND.name]: kept }) };
  }, `${path}/proposals/new`);
  return (
    <>
      <PageHeading
        title="New proposal"
        lede="A change worked out before it is made: zones, levers, what a year of it would bring, and how it is tried."
      />
      <StandingNote note={note} hasFields />
      {ground?.building ? (
        <Section id="proposal" title="Levers and what they bring" wide>
          <ProposalEditor
            action={saveProposalAction.bind(null, id, null)}
            values={beginningValues(building, ground, only, drawnSeed())}
            zones={ground.verdicts}
            building={ground.building}
            temperatureUnit={building.temperatureUnit}
            buildingPath={path}
            submitLabel="Save as a draft"
          />
        </Section>
      ) : ground ? (
        <EmptyState>A proposal needs a weather year and zone trends: bring them in first.</EmptyState>
      ) : null}
    </>
  );
}

/** What alternate weeks would be drawn by: nobody's choice, and stored once the draft is saved. */
const drawnSeed = (): number => crypto.getRandomValues(new Uint16Array(1))[0] ?? 1;
