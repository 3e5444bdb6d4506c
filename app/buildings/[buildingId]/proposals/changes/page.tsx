import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { readChangeLog } from "@/lib/services/proposals/changes";
import { readProposals } from "@/lib/services/proposals/find";
import { SETPOINT_MOVES } from "@/lib/services/proposals/setpoint-moves";
import { standingNote } from "../../standing-note";
import { ChangeForm } from "../_components/change-form";
import { decideChangeAction } from "../actions";
import { changeSentence, wentBackSentence } from "../change-words";

export const metadata: Metadata = { title: "Changes of setpoints" };

type Props = { params: Promise<{ buildingId: string }> };

/** Setpoints that moved: those that the trends show and nobody has decided on, and the log. */
export default async function ChangesPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/proposals/changes`;
  const { building, log, proposals, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const kept = await readKept(ctx, id, SETPOINT_MOVES);
    return {
      building,
      log: readChangeLog(ctx, id, kept.result?.moves ?? []),
      proposals: readProposals(ctx, id),
      note: standingNote(ctx, building, { [SETPOINT_MOVES.name]: kept }),
    };
  }, path);
  const choices = proposals
    .filter(({ status }) => ["approved", "in-force", "held", "adopted", "rolled-back"].includes(status))
    .map(({ row }) => ({ value: String(row.id), label: row.title }));
  return (
    <>
      <PageHeading
        title="Changes of setpoints"
        lede="An active setpoint that moved and stayed for three occupied days is offered here. Confirm it, say why, and it is followed: a change that goes back is named with its day."
      />
      <StandingNote note={note} hasFields />
      <Section id="offered" title="Found in the trends">
        {log.offered.length === 0 ? <EmptyState>No change waits for a decision.</EmptyState> : null}
        {log.offered.map((move) => (
          <ChangeForm
            key={`${move.zoneId}-${move.setting}-${move.atUtcSeconds}`}
            action={decideChangeAction.bind(null, id)}
            sentence={changeSentence(move, building)}
            move={{ zoneId: move.zoneId, setting: move.setting, atUtcSeconds: move.atUtcSeconds }}
            proposals={choices}
          />
        ))}
      </Section>
      <Section id="log" title="Log" wide>
        <DataTable
          caption="Changes that were decided on, latest first"
          captionHidden
          rows={log.changes}
          rowKey={(change) => change.id}
          empty={<EmptyState>Nothing has been confirmed or rejected yet.</EmptyState>}
          columns={[
            {
              key: "what",
              head: "Change",
              names: true,
              cell: (change) => changeSentence({ ...change, fromC: change.fromValue, toC: change.toValue }, building),
            },
            { key: "decision", head: "Decision", cell: (change) => change.decision },
            {
              key: "proposal",
              head: "Proposal",
              cell: (change) => proposals.find(({ row }) => row.id === change.proposalId)?.row.title ?? "",
            },
            { key: "by", head: "Changed by", cell: (change) => change.changedBy },
            { key: "reason", head: "Why", cell: (change) => change.reason },
            {
              key: "stands",
              head: "Since",
              prose: true,
              cell: (change) =>
                change.decision === "rejected"
                  ? ""
                  : change.wentBack
                    ? wentBackSentence({ ...change, back: change.wentBack }, building)
                    : "stands",
            },
            { key: "entered", head: "Entered by", cell: (change) => change.enteredBy },
          ]}
        />
      </Section>
    </>
  );
}
