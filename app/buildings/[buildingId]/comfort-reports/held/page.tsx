import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { readAs } from "@/app/_server/read";
import { voteWords } from "@/lib/comfort-reports/thermal-sensation";
import { readBuilding } from "@/lib/services/buildings/find";
import { readHeldReports } from "@/lib/services/comfort-reports/held";
import { reportColumns } from "@/lib/services/comfort-reports/report-input";
import { formatLocal } from "@/lib/time/format";
import { remarksOf, WISH } from "../view-model";
import { decideHeldAction } from "./actions";

export const metadata: Metadata = { title: "Reports kept aside" };

type Props = { params: Promise<{ buildingId: string }> };

/** Reports of a flood: each is taken in or dropped by a person. */
export default async function HeldReportsPage({ params }: Props) {
  const { buildingId } = await params;
  const { building, held } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, Number(buildingId)),
      held: readHeldReports(ctx, Number(buildingId)),
    }),
    `/buildings/${buildingId}/comfort-reports/held`,
  );
  return (
    <>
      <PageHeading
        title="Reports kept aside"
        lede="They came beyond what a link or a network address sends in an hour. Taken in, a report counts from when it was sent; dropped, it is deleted."
      />
      <Section id="held" wide>
        <DataTable
          caption="Reports kept aside, newest first"
          captionHidden
          rows={held}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "at",
              head: "When",
              names: true,
              cell: (row) => formatLocal(row.heldAtMs, building.timeZone, "date-time"),
            },
            { key: "zone", head: "Zone", cell: (row) => row.zoneCode },
            { key: "desk", head: "Desk", cell: (row) => row.deskCode ?? "" },
            { key: "vote", head: "Feels", cell: (row) => voteWords(row.sent.thermalSensation) },
            { key: "wish", head: "Would like it", cell: (row) => WISH[row.sent.preference] },
            { key: "remarks", head: "Remarks", cell: (row) => remarksOf(reportColumns(row.sent)) },
            {
              key: "decide",
              head: "Decide",
              cell: (row) => (
                <form action={decideHeldAction.bind(null, building.id, row.id)}>
                  <SubmitButton kind="plain" name="decision" value="take" pendingLabel="Taking in">
                    Take in
                  </SubmitButton>{" "}
                  <SubmitButton kind="plain" name="decision" value="drop" pendingLabel="Dropping">
                    Drop
                  </SubmitButton>
                </form>
              ),
            },
          ]}
          empty={<EmptyState>Nothing is kept aside.</EmptyState>}
        />
      </Section>
    </>
  );
}
