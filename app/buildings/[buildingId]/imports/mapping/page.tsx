import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { readPlaces } from "@/lib/services/zones/places";
import { MappingForm } from "./_components/mapping-form";
import { confirmMappingAction } from "./actions";
import { mappingLede, mappingLines } from "./view-model";

export const metadata: Metadata = { title: "Map the points" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function MappingPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/imports`;
  const { task, places, building } = await readAs(
    (ctx) => ({
      task: readMappingTask(ctx, id),
      places: readPlaces(ctx, id),
      building: readBuilding(ctx, id),
    }),
    `${path}/mapping`,
  );
  if (task.waiting.length === 0) {
    return (
      <>
        <PageHeading title="Map the points" />
        <EmptyState action={<LinkButton href={path}>Back to imports</LinkButton>}>
          No file waits for its mapping.
        </EmptyState>
      </>
    );
  }
  return (
    <>
      <PageHeading title="Map the points" lede={mappingLede(task)} />
      <MappingForm
        action={confirmMappingAction.bind(null, id)}
        lines={mappingLines(task, building.timeZone)}
        asks={task.fileAsks}
        zones={places.zones}
      />
    </>
  );
}
