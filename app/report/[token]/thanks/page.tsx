import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";
import { LinkButton } from "@/app/_components/ui/button";

export const metadata: Metadata = { title: "Thank you", robots: { index: false } };

type Props = { params: Promise<{ token: string }> };

export default async function ThanksPage({ params }: Props) {
  const { token } = await params;
  return (
    <PublicShell>
      <PageHeading
        title="Thank you, your report is in"
        lede="Facilities staff see it beside the temperature that your zone had at this moment. Report again whenever it changes."
      />
      <LinkButton href={`/report/${token}`}>Report again</LinkButton>
    </PublicShell>
  );
}
