import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readReportRetention } from "@/lib/services/comfort-reports/retention";
import { RetentionForm } from "./_components/retention-form";
import { changeRetentionAction } from "./actions";

export const metadata: Metadata = { title: "What reports keep" };

type Props = { params: Promise<{ buildingId: string }> };

/** How long reports keep what they say of whoever sent them. */
export default async function ReportPrivacyPage({ params }: Props) {
  const { buildingId } = await params;
  const { building, retention } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, Number(buildingId)),
      retention: readReportRetention(ctx, Number(buildingId)),
    }),
    `/buildings/${buildingId}/comfort-reports/privacy`,
  );
  return (
    <>
      <PageHeading
        title="What reports keep"
        lede="Once an hour reply addresses, notes and desks that are past their days are deleted for good. Votes, wishes, times and zones stay, and repeats of a day still count once; whether one desk or the zone is meant can then no longer be told of a report. Ask whoever sees to data protection in your organisation which days hold for you."
      />
      <RetentionForm action={changeRetentionAction.bind(null, building.id)} retention={retention} />
    </>
  );
}
