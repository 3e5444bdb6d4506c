import type { Metadata } from "next";
import { headers } from "next/headers";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";
import { requestContext } from "@/app/_server/request-context";
import { openComfortForm } from "@/lib/services/comfort-reports/file";
import { chooseLanguage, LANGUAGES } from "../messages/choose-language";
import { LanguageChoice } from "./_components/language-choice";
import { fileReportAction } from "./actions";
import { ReportForm } from "./form";

export const metadata: Metadata = { title: "How is the temperature?", robots: { index: false } };

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ language?: string | string[] }> };

/** The occupant's form: no account, no navigation, nothing about the building or about anyone else. */
export default async function ReportPage({ params, searchParams }: Props) {
  const { token } = await params;
  const { language } = await searchParams;
  const messages = chooseLanguage([language].flat()[0], (await headers()).get("accept-language"));
  const { open } = openComfortForm(await requestContext(), token);
  if (!open) {
    return (
      <PublicShell language={messages.tag}>
        <PageHeading title={messages.ended.title} lede={messages.ended.lede} />
      </PublicShell>
    );
  }
  const { receipt: _, ended: __, scaleSource: ___, ...formMessages } = messages;
  return (
    <PublicShell language={messages.tag}>
      <PageHeading title={messages.title} lede={messages.lede} />
      <ReportForm
        key={messages.tag}
        action={fileReportAction.bind(null, token)}
        submissionId={crypto.randomUUID()}
        messages={formMessages}
      />
      <LanguageChoice
        legend={messages.chooseLanguage}
        languages={LANGUAGES.map(({ tag, name }) => ({ tag, name }))}
        present={messages.tag}
        path={`/report/${token}`}
      />
    </PublicShell>
  );
}
