import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Notice } from "@/app/_components/ui/notice";
import { Pager } from "@/app/_components/ui/pager";
import { readAs } from "@/app/_server/read";
import { STATE_WORDS } from "@/lib/comfort-reports/report-state";
import { voteWords } from "@/lib/comfort-reports/thermal-sensation";
import { readBuilding } from "@/lib/services/buildings/find";
import { INBOX_PAGE, readInbox } from "@/lib/services/comfort-reports/inbox";
import { readShownZones } from "@/lib/services/zones/shown";
import { formatLocal } from "@/lib/time/format";
import { OpenZoneTable } from "./_components/open-zone-table";
import { ViewChoice } from "./_components/view-choice";
import styles from "./inbox.module.css";
import { inboxAddress, inboxLede, openZoneLines, responseWords, wantedOf } from "./inbox-view-model";
import { remarksOf, WISH } from "./view-model";

export const metadata: Metadata = { title: "Comfort reports" };

type Props = {
  params: Promise<{ buildingId: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
};

/** The inbox: which zones have open reports, and the reports themselves. */
export default async function ComfortReportsPage({ params, searchParams }: Props) {
  const { buildingId } = await params;
  const wanted = wantedOf(await searchParams);
  const path = `/buildings/${buildingId}`;
  const here = `${path}/comfort-reports`;
  const { building, inbox, overview, nowMs } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, Number(buildingId));
    const { overview } = await readShownZones(ctx, building.id);
    return { building, overview, inbox: readInbox(ctx, building.id, wanted), nowMs: ctx.now };
  }, here);
  const href = inboxAddress(here, wanted);
  return (
    <>
      <PageHeading title="Comfort reports" lede={inboxLede(inbox)} />
      {inbox.held > 0 ? (
        <Notice
          kind="caution"
          title={inbox.held === 1 ? "1 report is kept aside" : `${inbox.held} reports are kept aside`}
          action={<LinkButton href={`${here}/held`}>Look at them</LinkButton>}
        >
          They came beyond what a link or a network address sends in an hour, and count nowhere until somebody takes
          them in.
        </Notice>
      ) : null}
      <Section
        id="zones"
        title="Zones with open reports"
        wide
        action={<LinkButton href={`${here}/links`}>Links for occupants</LinkButton>}
      >
        <OpenZoneTable lines={openZoneLines(inbox, { zones: overview.zones, nowMs, here })} buildingPath={path} />
        <p>{responseWords(inbox.response)}</p>
        <p className={styles.more}>
          <Link href={`${here}/both-sides`}>What warmer air would bring on both sides</Link>
          <a href={`${here}/take-away`}>All single reports as CSV, for facilities alone</a>
          <a href={`${here}/take-away?counts`}>Counts by zone as CSV, to hand on</a>
          <Link href={`${here}/mail`}>Mail about reports</Link>
          <Link href={`${here}/webhook`}>Webhook for new reports</Link>
          <Link href={`${here}/privacy`}>What reports keep</Link>
        </p>
      </Section>
      <Section
        id="reports"
        title="Reports, newest first"
        wide
        action={<LinkButton href={`${here}/enter`}>Enter a report</LinkButton>}
      >
        <ViewChoice present={wanted.view} href={href} />
        <DataTable
          caption="Comfort reports, newest first"
          captionHidden
          rows={inbox.reports}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "at",
              head: "When",
              names: true,
              cell: (row) => (
                <Link href={`${here}/${row.id}`}>{formatLocal(row.reportedAtMs, building.timeZone, "date-time")}</Link>
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
            { key: "state", head: "State", cell: (row) => STATE_WORDS[row.state] },
            { key: "remarks", head: "Remarks", cell: remarksOf },
          ]}
          empty={
            <EmptyState
              action={
                <LinkButton kind="primary" href={`${here}/links`}>
                  Make a link for occupants
                </LinkButton>
              }
            >
              No report here. Occupants report through a link for their zone or desk; they need no account.
            </EmptyState>
          }
        />
        <Pager
          many="reports"
          page={inbox.page}
          pages={inbox.pages}
          first={(inbox.page - 1) * INBOX_PAGE + 1}
          shown={inbox.reports.length}
          count={inbox.count}
          href={(page) => href({ page })}
        />
      </Section>
    </>
  );
}
