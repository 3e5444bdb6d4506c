import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { BuildingForm } from "../../_components/building-form";
import { formFromBuilding } from "../../form";
import { reviseBuildingAction } from "./actions";

export const metadata: Metadata = { title: "Settings" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function SettingsPage({ params }: Props) {
  const { buildingId } = await params;
  const building = await readAs((ctx) => readBuilding(ctx, Number(buildingId)), `/buildings/${buildingId}/settings`);
  return (
    <>
      <PageHeading
        title="Settings"
        lede={
          <>
            What the cost is counted by: the clock, the hours, the system and the prices. Time of use, blocks and a
            ratchet stand on the <Link href={`/buildings/${building.id}/tariff`}>tariff page</Link>.
          </>
        }
      />
      <BuildingForm
        action={reviseBuildingAction.bind(null, building.id)}
        values={formFromBuilding(building)}
        timeZones={Intl.supportedValuesOf("timeZone")}
        submitLabel="Save"
      />
    </>
  );
}
