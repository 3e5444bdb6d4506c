import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { usualComplaintWords } from "@/lib/services/comfort-reports/import-past";
import { PastReportsForm } from "./_components/past-reports-form";
import { pastReportsAction } from "./actions";

export const metadata: Metadata = { title: "Past complaints" };

type Props = { params: Promise<{ buildingId: string }> };

/** A table of complaints from before: read, corrected, then taken in. */
export default async function PastReportsPage({ params }: Props) {
  const { buildingId } = await params;
  const building = await readAs(
    (ctx) => readBuilding(ctx, Number(buildingId)),
    `/buildings/${buildingId}/comfort-reports/past`,
  );
  return (
    <>
      <PageHeading
        title="Past complaints"
        lede="A CSV table with date, zone or desk, and what was written. You see what becomes of every row before anything is taken in."
      />
      <PastReportsForm
        action={pastReportsAction.bind(null, building.id)}
        coldWords={usualComplaintWords().cold.join(", ")}
        hotWords={usualComplaintWords().hot.join(", ")}
      />
    </>
  );
}
