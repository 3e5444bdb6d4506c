import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Tag } from "@/app/_components/ui/tag";
import { readAs } from "@/app/_server/read";
import { isOnTrial, STATUS_WORDS } from "@/lib/proposals/proposal-status";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { readProposals } from "@/lib/services/proposals/find";
import { WATCHED_TRIALS } from "@/lib/services/proposals/watch";
import { formatLocal } from "@/lib/time/format";
import { standingNote } from "../standing-note";
import styles from "./_components/proposal.module.css";
import { brokenSentence } from "./stop-rule-words";
import { leverSentences } from "./view-model";

export const metadata: Metadata = { title: "Proposals" };

type Props = { params: Promise<{ buildingId: string }> };

/** What was proposed for a building and how far it is. */
export default async function ProposalsPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/proposals`;
  const { building, proposals, trials, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const proposals = readProposals(ctx, id);
    if (!proposals.some(({ status }) => isOnTrial(status))) return { building, proposals, trials: [], note: null };
    const kept = await readKept(ctx, id, WATCHED_TRIALS);
    const note = standingNote(ctx, building, { [WATCHED_TRIALS.name]: kept });
    return { building, proposals, trials: kept.result?.trials ?? [], note };
  }, path);
  const brokenOf = (proposalId: number): string[] =>
    (trials.find((each) => each.proposalId === proposalId)?.rules ?? []).flatMap(
      (each) => brokenSentence(each, building.temperatureUnit) ?? [],
    );
  return (
    <>
      <PageHeading
        title="Proposals"
        lede="A change is worked out, approved on a frozen copy, tried with limits set in advance, and proved afterwards."
      />
      <StandingNote note={note} />
      <Section id="proposals" title="On record" wide action={<Link href={`${path}/new`}>New proposal</Link>}>
        <p>
          <Link href={`${path}/changes`}>Changes of setpoints that the trends show</Link>
        </p>
        <DataTable
          caption="Proposals of the building, newest first"
          captionHidden
          rows={proposals}
          rowKey={({ row }) => row.id}
          empty={
            <EmptyState>
              Nothing has been proposed yet. <Link href={`${path}/new`}>Begin with what the diagnosis proposes</Link>.
            </EmptyState>
          }
          columns={[
            {
              key: "title",
              head: "Proposal",
              names: true,
              cell: ({ row }) => <Link href={`${path}/${row.id}`}>{row.title}</Link>,
            },
            {
              key: "levers",
              head: "Proposed",
              cell: ({ row, variants }) =>
                leverSentences(
                  variants.find((each) => each.position === row.chosenPosition)?.levers ?? [],
                  building.temperatureUnit,
                ).join("; "),
            },
            {
              key: "status",
              head: "Status",
              prose: trials.length > 0,
              cell: ({ row, status }) => (
                <>
                  {STATUS_WORDS[status]}
                  {brokenOf(row.id).length > 0 ? (
                    <span className={styles.broken}>
                      <Tag kind="strong">stop rule broken</Tag> {brokenOf(row.id).join(" ")} Hold it or roll it back.
                    </span>
                  ) : null}
                </>
              ),
            },
            {
              key: "since",
              head: "Since",
              cell: ({ events }) => formatLocal(events.at(-1)?.enteredAtMs ?? 0, building.timeZone, "date"),
            },
            { key: "by", head: "By", cell: ({ events }) => events.at(-1)?.enteredBy ?? "" },
          ]}
        />
      </Section>
    </>
  );
}
