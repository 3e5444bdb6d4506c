import type { Metadata } from "next";
import { headers } from "next/headers";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { requestContext } from "@/app/_server/request-context";
import { type FollowedReport, followReport } from "@/lib/services/comfort-reports/follow";
import { ServiceError } from "@/lib/services/errors";
import { chooseLanguage } from "../../messages/choose-language";
import type { Messages } from "../../messages/messages";
import { localTime, scaleWord } from "./view-model";

/** The address is a secret: it is not handed on to other sites, and not searched. */
export const metadata: Metadata = { title: "Your report", robots: { index: false }, referrer: "no-referrer" };

type Props = { params: Promise<{ followToken: string }>; searchParams: Promise<{ new?: string }> };

/** Receipt of a report and, at the same address, how far it is and what was answered. */
export default async function FollowPage({ params, searchParams }: Props) {
  const { followToken } = await params;
  const isNew = (await searchParams).new !== undefined;
  const report = read(await requestContext(), followToken);
  const messages = chooseLanguage(report?.language, (await headers()).get("accept-language"));
  const { receipt } = messages;
  if (!report) {
    return (
      <PublicShell language={messages.tag}>
        <PageHeading title={receipt.unknownTitle} lede={receipt.unknownLede} />
      </PublicShell>
    );
  }
  const thanks = report.state === "held" ? receipt.heldThanks : receipt.thanks;
  return (
    <PublicShell language={messages.tag}>
      <PageHeading
        title={isNew ? thanks : receipt.yours}
        lede={`${receipt.youSaid}: ${scaleWord(report, messages)} (${localTime(report.reportedAtMs, report, messages)}).`}
      />
      {isNew ? (
        <Section id="next" title={receipt.next}>
          <ol>
            {receipt.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </Section>
      ) : null}
      <Section id="so-far" title={receipt.soFar}>
        <Steps report={report} messages={messages} />
        <p>{receipt.keep}</p>
      </Section>
      {report.linkToken ? (
        <LinkButton href={`/report/${report.linkToken}?language=${messages.tag}`}>{receipt.again}</LinkButton>
      ) : null}
    </PublicShell>
  );
}

function Steps({ report, messages }: { report: FollowedReport; messages: Messages }) {
  const { states, nothingYet } = messages.receipt;
  const begun = report.state === "held" ? states.held : states.received;
  return (
    <>
      <ul>
        <li>
          {localTime(report.reportedAtMs, report, messages)}: {begun}
        </li>
        {report.steps.map((step) => (
          <li key={step.id}>
            {localTime(step.atMs, report, messages)}
            {step.state ? `: ${states[step.state]}` : ""}
            {step.answer ? <p>{step.answer}</p> : null}
          </li>
        ))}
      </ul>
      {report.steps.some(({ answer }) => answer !== "") ? null : <p>{nothingYet}</p>}
    </>
  );
}

function read(ctx: Parameters<typeof followReport>[0], followToken: string): FollowedReport | undefined {
  try {
    return followReport(ctx, followToken);
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") return undefined;
    throw error;
  }
}
