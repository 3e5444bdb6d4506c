import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { DataTable } from "@/app/_components/ui/data-table";
import { Notice } from "@/app/_components/ui/notice";
import { readAs } from "@/app/_server/read";
import { isOnTrial, isOpen, NEXT_STATUSES, STATUS_WORDS } from "@/lib/proposals/proposal-status";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { readProposal } from "@/lib/services/proposals/find";
import { PROPOSAL_GROUND, readGround } from "@/lib/services/proposals/ground";
import { WATCHED_TRIALS } from "@/lib/services/proposals/watch";
import { formatLocal } from "@/lib/time/format";
import { standingNote } from "../../standing-note";
import { DecisionForm } from "../_components/decision-form";
import { IssuedProposal } from "../_components/issued-proposal";
import { ProposalEditor } from "../_components/proposal-editor";
import { BrokenRules, StopRules } from "../_components/stop-rules";
import { VentilationForm } from "../_components/ventilation-form";
import { confirmVentilationAction, decideProposalAction, saveProposalAction } from "../actions";
import { proposesLowerMinimum, valuesOf } from "../view-model";

export const metadata: Metadata = { title: "Proposal" };

type Props = { params: Promise<{ buildingId: string; proposalId: string }> };

/** A proposal: what is to be decided, its figures as issued, its life, and while it is open its levers. */
export default async function ProposalPage({ params }: Props) {
  const { buildingId, proposalId } = await params;
  const [id, proposalNumber] = [Number(buildingId), Number(proposalId)];
  const path = `/buildings/${id}`;
  const { building, proposal, ground, note, trial } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const proposal = readProposal(ctx, id, proposalNumber);
    if (!isOpen(proposal.status)) {
      const watched = isOnTrial(proposal.status) ? await readKept(ctx, id, WATCHED_TRIALS) : null;
      const trial = watched?.result?.trials.find((each) => each.proposalId === proposalNumber) ?? null;
      const note = watched && standingNote(ctx, building, { [WATCHED_TRIALS.name]: watched });
      return { building, proposal, ground: null, note, trial };
    }
    const kept = await readGround(ctx, id);
    const note = standingNote(ctx, building, { [PROPOSAL_GROUND.name]: kept });
    return { building, proposal, ground: kept.result, note, trial: null };
  }, `${path}/proposals/${proposalNumber}`);
  const { row, status, events, issues } = proposal;
  const issued = issues[0]?.copy;
  const needsCheck = proposesLowerMinimum(proposal);
  const isOver = NEXT_STATUSES[status].length === 0;
  return (
    <>
      <PageHeading title={row.title} lede={row.reason || `This proposal is ${STATUS_WORDS[status]}.`} />
      <StandingNote note={note} hasFields />
      {trial ? <BrokenRules trial={trial} unit={building.temperatureUnit} /> : null}
      {needsCheck && row.ventilationEngineer === null && !isOver ? (
        <Notice kind="caution" title="A minimum airflow goes down">
          <p>
            An engineer must check the ventilation of each of these zones, under the code that applies, before this
            proposal can be approved.
          </p>
        </Notice>
      ) : null}
      <Section
        id="decisions"
        title={`Status: ${STATUS_WORDS[status]}`}
        action={<Link href={`${path}/proposals/${row.id}/verification`}>Verification</Link>}
      >
        <DataTable
          caption="What became of the proposal"
          captionHidden
          rows={events}
          rowKey={(event) => event.id}
          columns={[
            { key: "status", head: "Step", names: true, cell: (event) => STATUS_WORDS[event.status] },
            {
              key: "at",
              head: "When",
              cell: (event) => formatLocal(event.enteredAtMs, building.timeZone, "date-time"),
            },
            { key: "by", head: "Who", cell: (event) => event.enteredBy },
            { key: "comment", head: "Comment", cell: (event) => event.comment },
          ]}
        />
        {row.ventilationEngineer ? (
          <p>
            Ventilation checked by {row.ventilationEngineer} on {row.ventilationCheckedOn}: {row.ventilationNote}
          </p>
        ) : needsCheck && ["draft", "sent-back", "submitted"].includes(status) ? (
          <VentilationForm action={confirmVentilationAction.bind(null, id, row.id)} />
        ) : null}
        {isOver ? null : <DecisionForm action={decideProposalAction.bind(null, id, row.id)} status={status} />}
      </Section>
      {trial ? <StopRules trial={trial} unit={building.temperatureUnit} /> : null}
      {issued ? <IssuedProposal copy={issued} buildingPath={path} /> : null}
      {ground?.building ? (
        <Section id="proposal" title="Levers and plan" wide>
          <ProposalEditor
            action={saveProposalAction.bind(null, id, row.id)}
            values={valuesOf(proposal, building)}
            zones={ground.verdicts}
            building={ground.building}
            temperatureUnit={building.temperatureUnit}
            buildingPath={path}
            submitLabel="Save the draft"
          />
        </Section>
      ) : null}
    </>
  );
}
