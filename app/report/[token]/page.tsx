import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";
import { requestContext } from "@/app/_server/request-context";
import { openComfortForm } from "@/lib/services/comfort-reports/file";
import { fileReportAction } from "./actions";
import { ReportForm } from "./form";

export const metadata: Metadata = { title: "How is the temperature?", robots: { index: false } };

type Props = { params: Promise<{ token: string }> };

/** The occupant's form: no account, no navigation, nothing about the building or about anyone else. */
export default async function ReportPage({ params }: Props) {
  const { token } = await params;
  const { open } = openComfortForm(await requestContext(), token);
  if (!open) {
    return (
      <PublicShell>
        <PageHeading title="This link is no longer in use" lede="Please ask your facilities team for the new one." />
      </PublicShell>
    );
  }
  return (
    <PublicShell>
      <PageHeading title="How is the temperature where you sit?" lede="Two answers are enough. No name is asked for." />
      <ReportForm action={fileReportAction.bind(null, token)} submissionId={crypto.randomUUID()} />
    </PublicShell>
  );
}
