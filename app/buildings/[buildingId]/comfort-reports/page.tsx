import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { voteWords } from "@/lib/comfort-reports/thermal-sensation";
import { readBuilding } from "@/lib/services/buildings/find";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { formatLocal } from "@/lib/time/format";
import { countsLede, remarksOf, WISH } from "./view-model";

export const metadata: Metadata = { title: "Comfort reports" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function ComfortReportsPage({ params }: Props) {
  const { buildingId } = await params;
  const path = `/buildings/${buildingId}`;
  const { building, reports } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, Number(buildingId)),
      reports: readComfortReports(ctx, Number(buildingId)),
    }),
    `${path}/comfort-reports`,
  );
  return (
    <>
      <PageHeading title="Comfort reports" lede={countsLede(reports)} />
      <Section
        id="reports"
        title="Reports, newest first"
        wide
        action={<LinkButton href={`${path}/comfort-reports/links`}>Links for occupants</LinkButton>}
      >
        <DataTable
          caption="Comfort reports, newest first"
          captionHidden
          rows={reports}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "at",
              head: "When",
              names: true,
              cell: (row) => (
                <Link href={`${path}/comfort-reports/${row.id}`}>
                  {formatLocal(row.reportedAtMs, building.timeZone, "date-time")}
                </Link>
              ),
            },
            {
              key: "zone",
              head: "Zone",
              cell: (row) => <Link href={`${path}/zones/${row.zoneId}`}>{row.zoneCode}</Link>,
            },
            { key: "desk", head: "Desk", cell: (row) => row.deskCode ?? "" },
            { key: "vote", head: "Feels", cell: (row) => voteWords(row.thermalSensation) },
            { key: "wish", head: "Would like it", cell: (row) => WISH[row.preference] },
            { key: "remarks", head: "Remarks", cell: remarksOf },
          ]}
          empty={
            <EmptyState
              action={
                <LinkButton kind="primary" href={`${path}/comfort-reports/links`}>
                  Make a link for occupants
                </LinkButton>
              }
            >
              No report yet. Occupants report through a link for their zone or desk; they need no account.
            </EmptyState>
          }
        />
      </Section>
    </>
  );
}
