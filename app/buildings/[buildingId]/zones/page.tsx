import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { mergedNote } from "@/lib/comfort-reports/disclosure/disclosure-words";
import { readBuilding } from "@/lib/services/buildings/find";
import { readShownZones } from "@/lib/services/zones/shown";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import { standingNote } from "../standing-note";
import { AddDeskForm } from "./_components/add-desk-form";
import { ZoneForm } from "./_components/zone-form";
import { addDeskAction, addZoneAction } from "./actions";
import { unitsOf } from "./form";
import { zoneLines, zonesLede } from "./view-model";

export const metadata: Metadata = { title: "Zones" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function ZonesPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, overview, isWorkedOut, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const { overview, kept } = await readShownZones(ctx, id);
    return {
      building,
      overview,
      isWorkedOut: kept.result !== null,
      note: standingNote(ctx, building, { zones: kept }),
    };
  }, `${path}/zones`);
  const degree = building.temperatureUnit === "F" ? "°F" : "°C";
  return (
    <>
      <PageHeading title="Zones" lede={isWorkedOut ? zonesLede(overview) : undefined} />
      <StandingNote note={note} hasFields />
      <Section
        id="zones"
        title="All zones"
        wide
        action={<LinkButton href={`${path}/data-quality`}>Data quality of all zones</LinkButton>}
      >
        <DataTable
          caption="Zones"
          captionHidden
          rows={zoneLines(overview, building)}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "code",
              head: "Zone",
              names: true,
              cell: (row) => <Link href={`${path}/zones/${row.id}`}>{row.code}</Link>,
            },
            { key: "name", head: "Name", cell: (row) => row.name },
            { key: "floor", head: "Floor", cell: (row) => row.floor },
            { key: "mean", head: "Occupied mean", unit: degree, align: "number", cell: (row) => row.mean },
            { key: "p5", head: "Coldest 5\u00a0%", unit: degree, align: "number", cell: (row) => row.coldest },
            { key: "csp", head: "Cooling setpoint", unit: degree, align: "number", cell: (row) => row.setpoint },
            { key: "below", head: "Below target", unit: "% of hours", align: "number", cell: (row) => row.belowPct },
            { key: "desks", head: "Desks", align: "number", cell: (row) => row.desks },
            { key: "heaters", head: "Heaters", align: "number", cell: (row) => row.heaters },
            { key: "fans", head: "Fans", align: "number", cell: (row) => row.fans },
            {
              key: "open",
              head: "Open reports",
              align: "number",
              cell: (row) =>
                row.openReports > 0 ? (
                  <Link href={`${path}/comfort-reports?zone=${row.id}`}>{row.openReports}</Link>
                ) : (
                  0
                ),
            },
            { key: "cold", head: "Cold reports", align: "number", cell: (row) => row.coldReports },
            { key: "hot", head: "Hot reports", align: "number", cell: (row) => row.hotReports },
            {
              key: "verdict",
              head: "Verdict",
              cell: (row) =>
                row.verdict ? VERDICT_WORDS[row.verdict] : isWorkedOut ? "no trends" : "not yet worked out",
            },
          ]}
          empty={
            <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in a table of zones</LinkButton>}>
              No zone yet. A zone is the space that one controller serves. Bring them in as a table, or type them below.
            </EmptyState>
          }
        />
        {overview.reports.hidden.size > 0 ? <p>{mergedNote(overview.reports)}</p> : null}
      </Section>
      <Section id="add" title="Add a zone">
        <ZoneForm
          action={addZoneAction.bind(null, id, unitsOf(building))}
          units={unitsOf(building)}
          values={{}}
          submitLabel="Add the zone"
        />
      </Section>
      {overview.zones.length > 0 ? (
        <Section id="add-desk" title="Add a desk">
          <AddDeskForm
            action={addDeskAction.bind(null, id)}
            zones={overview.zones.map(({ zone }) => ({ code: zone.code, name: zone.name }))}
          />
        </Section>
      ) : null}
    </>
  );
}
