import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readMailRecipients } from "@/lib/services/report-mail/recipients";
import { readMailServer } from "@/lib/services/report-mail/server";
import { readUnsentAnswers } from "@/lib/services/report-mail/standing";
import { formatLocal } from "@/lib/time/format";
import { siteOrigin } from "../links/origin";
import { MailServerForm } from "./_components/mail-server-form";
import { RecipientForm } from "./_components/recipient-form";
import { TestMailForm } from "./_components/test-mail-form";
import {
  addRecipientAction,
  endMailServerAction,
  removeRecipientAction,
  sendTestMailAction,
  setMailServerAction,
  tryAgainAction,
} from "./actions";
import { hourWords, recipientLines, SECURITY_WORDS, unsentLines } from "./view-model";

export const metadata: Metadata = { title: "Mail about reports" };

type Props = { params: Promise<{ buildingId: string }> };

const HOURS = Array.from({ length: 24 }, (_, hour) => ({
  value: String(hour),
  label: `Once a day at ${hourWords(hour)}`,
}));
const SECURITIES = Object.entries(SECURITY_WORDS).map(([value, label]) => ({ value, label }));

/** Mail to facilities people about new reports, and of answers to occupants who left an address. */
export default async function ReportMailPage({ params }: Props) {
  const { buildingId } = await params;
  const path = `/buildings/${buildingId}/comfort-reports`;
  const { building, server, recipients, unsent } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, Number(buildingId)),
      server: readMailServer(ctx, Number(buildingId)),
      recipients: readMailRecipients(ctx, Number(buildingId)),
      unsent: readUnsentAnswers(ctx, Number(buildingId)),
    }),
    `${path}/mail`,
  );
  const { id, timeZone } = building;
  const isBehind = recipients.some(({ failures }) => failures > 0) || unsent.some(({ state }) => state === "failed");
  const serverSection = (
    <Section
      id="server"
      title="Mail server"
      action={
        server ? (
          <form action={endMailServerAction.bind(null, id)}>
            <SubmitButton kind="plain">Delete it with its password</SubmitButton>
          </form>
        ) : null
      }
    >
      {server ? (
        <p>
          Set by {server.changedBy}, {formatLocal(server.changedAtMs, timeZone, "date-time")}.
        </p>
      ) : null}
      <MailServerForm
        key={server?.changedAtMs ?? 0}
        action={setMailServerAction.bind(null, id)}
        server={server}
        securities={SECURITIES}
        siteAddress={await siteOrigin()}
      />
    </Section>
  );
  return (
    <>
      <PageHeading
        title="Mail about reports"
        lede={
          server
            ? "Whoever is on the list is told of new reports: when, which zone, the vote and the wish. Occupants who left an address get their answer by mail, in their language."
            : "No mail is sent: there is no mail server on record. New reports wait in the inbox, answers at each report's private address."
        }
      />
      {server ? null : serverSection}
      <Section
        id="recipients"
        title="Who is told of new reports"
        wide
        action={
          isBehind ? (
            <form action={tryAgainAction.bind(null, id)}>
              <SubmitButton kind="plain">Try failed mail again now</SubmitButton>
            </form>
          ) : null
        }
      >
        <DataTable
          caption="Who is told of new reports"
          captionHidden
          rows={recipientLines(recipients, timeZone)}
          rowKey={(row) => row.id}
          columns={[
            { key: "address", head: "Address", names: true, cell: (row) => row.address },
            { key: "zones", head: "Zones", cell: (row) => row.zones },
            { key: "pace", head: "When", cell: (row) => row.pace },
            { key: "last", head: "Last mail", cell: (row) => row.last },
            { key: "standing", head: "Standing", cell: (row) => row.standing },
            {
              key: "remove",
              head: "Take off",
              cell: (row) => (
                <form action={removeRecipientAction.bind(null, { buildingId: id, recipientId: row.id })}>
                  <SubmitButton kind="plain">Take {row.address} off</SubmitButton>
                </form>
              ),
            },
          ]}
          empty={<EmptyState>Nobody yet. Add an address below.</EmptyState>}
        />
      </Section>
      <Section id="add" title="Add an address">
        <RecipientForm key={recipients.length} action={addRecipientAction.bind(null, id)} hours={HOURS} />
      </Section>
      {unsent.length > 0 ? (
        <Section id="answers" title="Answers that were not mailed" wide>
          <DataTable
            caption="Answers that were not mailed, or not yet"
            captionHidden
            rows={unsentLines(unsent, timeZone)}
            rowKey={(row) => `${row.reportId} ${row.at}`}
            columns={[
              {
                key: "report",
                head: "Report",
                names: true,
                cell: (row) => <Link href={`${path}/${row.reportId}`}>{row.reportId}</Link>,
              },
              { key: "at", head: "Answered", cell: (row) => row.at },
              { key: "state", head: "State", cell: (row) => row.state },
              { key: "reason", head: "Reason", cell: (row) => row.reason },
            ]}
          />
        </Section>
      ) : null}
      {server ? serverSection : null}
      {server ? (
        <Section id="test" title="Does it work?">
          <TestMailForm action={sendTestMailAction.bind(null, id)} />
        </Section>
      ) : null}
    </>
  );
}
