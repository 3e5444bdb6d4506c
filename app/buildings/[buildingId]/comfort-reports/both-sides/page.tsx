import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBothSides } from "@/lib/services/both-sides/expect";
import { readBuilding } from "@/lib/services/buildings/find";
import { standingNote } from "../../standing-note";
import { recordWords, sideLines, sidesLede } from "./view-model";

export const metadata: Metadata = { title: "Both sides of a temperature" };

type Props = { params: Promise<{ buildingId: string }> };

/** What a warmer or cooler zone air would bring on both sides: reports of too cold and of too warm, side by side. */
export default async function BothSidesPage({ params }: Props) {
  const { buildingId } = await params;
  const path = `/buildings/${buildingId}`;
  const { building, sides, source, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, Number(buildingId));
    const { sides, source, kept } = await readBothSides(ctx, building.id);
    return { building, sides, source, note: standingNote(ctx, building, { "both-sides": kept }) };
  }, `${path}/comfort-reports/both-sides`);
  return (
    <>
      <PageHeading title="Both sides of a temperature" lede={sidesLede(sides, building.temperatureUnit)} />
      <StandingNote note={note} />
      <Section
        id="sides"
        title="Reports of a year's cooling season by zone air"
        wide
        remarks={
          <>
            <Remark title="What a figure is">
              Person-days that report, with the range in which the expected number lies with a chance of 90 %: uncertain
              are how readily people here report, how they differ from the field votes, and each zone. The count that is
              seen in a year scatters more than that.
            </Remark>
            <Remark title="Where it comes from">
              {source}; then this building&rsquo;s own reports against its occupied desk-hours by degree. Held out by
              building, the votes who wanted it cooler above 24 °C were fewer than the fit expects: people dress for a
              warm building.
            </Remark>
          </>
        }
      >
        <DataTable
          caption="Expected reports and wishes by a change of the zone air, all zones alike"
          captionHidden
          rows={sides ? sideLines(sides, building.temperatureUnit) : []}
          rowKey={(row) => row.key}
          columns={[
            { key: "shift", head: "Zone air", names: true, align: "number", cell: (row) => row.shift },
            { key: "mean", head: "Mean", align: "number", cell: (row) => row.mean },
            { key: "cold", head: "Too cold", unit: "a year", align: "number", cell: (row) => row.tooCold },
            { key: "coldRange", head: "90 % range", align: "number", cell: (row) => row.tooColdRange },
            { key: "warm", head: "Too warm", unit: "a year", align: "number", cell: (row) => row.tooWarm },
            { key: "warmRange", head: "90 % range", align: "number", cell: (row) => row.tooWarmRange },
            { key: "warmer", head: "Want it warmer", align: "number", cell: (row) => row.warmer },
            { key: "cooler", head: "Want it cooler", align: "number", cell: (row) => row.cooler },
          ]}
          empty={
            <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in trend logs</LinkButton>}>
              No zone has both desks on record and zone air of the cooling season: nothing can be expected.
            </EmptyState>
          }
        />
        {sides ? <p>{recordWords(sides, building.timeZone)}</p> : null}
      </Section>
    </>
  );
}
