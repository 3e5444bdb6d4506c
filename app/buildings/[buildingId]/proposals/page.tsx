import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { STATUS_WORDS } from "@/lib/proposals/proposal-status";
import { readBuilding } from "@/lib/services/buildings/find";
import { readProposals } from "@/lib/services/proposals/find";
import { formatLocal } from "@/lib/time/format";
import { leverSentences } from "./view-model";

export const metadata: Metadata = { title: "Proposals" };

type Props = { params: Promise<{ buildingId: string }> };

/** What was proposed for a building and how far it is. */
export default async function ProposalsPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/proposals`;
  const { building, proposals } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), proposals: readProposals(ctx, id) }),
    path,
  );
  return (
    <>
      <PageHeading
        title="Proposals"
        lede="A change is worked out, approved on a frozen copy, tried with limits set in advance, and proved afterwards."
      />
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
                leverSentences(variants.find((each) => each.position === row.chosenPosition)?.levers ?? []).join("; "),
            },
            { key: "status", head: "Status", cell: ({ status }) => STATUS_WORDS[status] },
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
