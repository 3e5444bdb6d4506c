import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readReportWebhook } from "@/lib/services/comfort-reports/webhook";
import { formatLocal } from "@/lib/time/format";
import { WebhookForm } from "./_components/webhook-form";
import { endWebhookAction, setWebhookAction } from "./actions";

export const metadata: Metadata = { title: "Webhook for new reports" };

type Props = { params: Promise<{ buildingId: string }> };

/** Where new reports are posted to, so that a work-order system hears of them at once. */
export default async function ReportWebhookPage({ params }: Props) {
  const { buildingId } = await params;
  const { building, webhook } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, Number(buildingId)),
      webhook: readReportWebhook(ctx, Number(buildingId)),
    }),
    `/buildings/${buildingId}/comfort-reports/webhook`,
  );
  const at = (atMs: number) => formatLocal(atMs, building.timeZone, "date-time");
  return (
    <>
      <PageHeading
        title="Webhook for new reports"
        lede="Each new report is posted as JSON: building, report, zone, desk, vote, wish and time; nothing that somebody wrote, and no address."
      />
      {webhook ? (
        <Section id="present" title="Set up" plain>
          <DefinitionList
            items={[
              { term: "Address", value: webhook.url },
              { term: "Secret", value: webhook.secret },
              {
                term: "Signature",
                value: "x-report-signature: HMAC-SHA256 of x-report-time, a full stop and the body, in hexadecimal",
              },
              { term: "Set by", value: `${webhook.createdBy}, ${at(webhook.createdAtMs)}` },
              { term: "Last taken", value: webhook.lastTakenAtMs === null ? "none yet" : at(webhook.lastTakenAtMs) },
              {
                term: "Standing",
                value: webhook.lastFault
                  ? `${webhook.lastFault} Tried again from ${at(webhook.nextTryAtMs)}.`
                  : "no problems",
              },
            ]}
          />
          <form action={endWebhookAction.bind(null, building.id)}>
            <SubmitButton kind="plain" pendingLabel="Ending">
              End it
            </SubmitButton>
          </form>
        </Section>
      ) : null}
      <Section id="set" title={webhook ? "Set another" : "Set it up"}>
        <WebhookForm key={webhook?.createdAtMs ?? 0} action={setWebhookAction.bind(null, building.id)} />
      </Section>
    </>
  );
}
