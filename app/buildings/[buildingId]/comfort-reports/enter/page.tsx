import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { LinkButton } from "@/app/_components/ui/button";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readPlaces } from "@/lib/services/zones/places";
import { localDateAt } from "@/lib/time/local-date";
import { EnterReportForm } from "./_components/enter-report-form";
import { enterReportAction } from "./actions";

export const metadata: Metadata = { title: "Enter a report" };

type Props = { params: Promise<{ buildingId: string }> };

/** A report that came by phone, mail or in person, entered by whoever took it. */
export default async function EnterReportPage({ params }: Props) {
  const { buildingId } = await params;
  const path = `/buildings/${buildingId}/comfort-reports`;
  const { building, places, today } = await readAs((ctx) => {
    const building = readBuilding(ctx, Number(buildingId));
    const today = localDateAt(ctx.now, building.timeZone);
    return { building, places: readPlaces(ctx, building.id), today };
  }, `${path}/enter`);
  return (
    <>
      <PageHeading
        title="Enter a report"
        lede="What somebody phoned, wrote or said, without a name. It counts like one sent through a link."
      />
      <EnterReportForm
        action={enterReportAction.bind(null, building.id, building.timeZone)}
        places={places}
        today={today}
      />
      <p>
        <LinkButton href={`${path}/past`}>Bring in a table of past complaints</LinkButton>
      </p>
    </>
  );
}
