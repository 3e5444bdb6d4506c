import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { listCollectors } from "@/lib/services/collectors/manage";
import { formatLocal } from "@/lib/time/format";
import { MakeTokenForm } from "./_components/make-token-form";
import { makeTokenAction, revokeTokenAction } from "./actions";

export const metadata: Metadata = { title: "Collectors" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function CollectorsPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const { building, tokens } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), tokens: listCollectors(ctx, id) }),
    `/buildings/${id}/imports/collectors`,
  );
  const when = (ms: number | null) => (ms === null ? "never" : formatLocal(ms, building.timeZone, "date-time"));
  return (
    <>
      <PageHeading
        title="Collectors"
        lede="Programs that bring trend files and readings to this building by themselves. Each shows a token, which can add and do nothing else."
      />
      <Section
        id="make"
        title="Make a token"
        remarks={
          <>
            <Remark title="Files">
              <code>POST /api/v1/buildings/{id}/trend-files?name=a.csv</code> with the file as the body.
            </Remark>
            <Remark title="Readings">
              <code>POST /api/v1/readings</code>, at most 5,000 a call, of points that are mapped.
            </Remark>
            <Remark title="Header">
              <code>Authorization: Bearer</code> and the token.
            </Remark>
          </>
        }
      >
        <MakeTokenForm action={makeTokenAction.bind(null, id)} />
      </Section>
      <Section id="tokens" title="Tokens" wide>
        <DataTable
          caption="Tokens of this building, newest first"
          captionHidden
          rows={tokens}
          rowKey={(row) => row.id}
          columns={[
            { key: "collector", head: "Collector", names: true, cell: (row) => row.collector },
            { key: "made", head: "Made", cell: (row) => `${when(row.createdAtMs)} by ${row.createdBy}` },
            { key: "used", head: "Last used", cell: (row) => when(row.lastUsedAtMs) },
            {
              key: "state",
              head: "State",
              cell: (row) =>
                row.revokedAtMs === null ? (
                  <form action={revokeTokenAction}>
                    <input type="hidden" name="buildingId" value={id} />
                    <input type="hidden" name="tokenId" value={row.id} />
                    <Button type="submit" aria-label={`Revoke the token of ${row.collector}`}>
                      Revoke
                    </Button>
                  </form>
                ) : (
                  `revoked ${when(row.revokedAtMs)}`
                ),
            },
          ]}
          empty={
            <EmptyState>No token yet. Make one above for each program, so that one can be revoked alone.</EmptyState>
          }
        />
      </Section>
    </>
  );
}
