import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { FindingsList, SeverityMark } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { QUALITY } from "@/lib/services/data-quality/read";
import { readKept } from "@/lib/services/kept/read-kept";
import { standingNote } from "../standing-note";
import { ImportRemarks } from "./_components/import-remarks";
import { buildingFindingLines, dataQualityLede, KEY_POINTS, pointWords, zoneQualityLines } from "./view-model";

export const metadata: Metadata = { title: "Data quality" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function DataQualityPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, quality, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const kept = await readKept(ctx, id, QUALITY);
    return { building, quality: kept.result, note: standingNote(ctx, building, { [QUALITY.name]: kept }) };
  }, `${path}/data-quality`);
  if (!quality) {
    return (
      <>
        <PageHeading title="Data quality" />
        <StandingNote note={note} />
      </>
    );
  }
  return (
    <>
      <PageHeading title="Data quality" lede={dataQualityLede(quality, building)} />
      <StandingNote note={note} />
      <Section id="zones" title="Zone by zone, the gravest first" wide>
        <DataTable
          caption="Data quality of every zone"
          captionHidden
          rows={zoneQualityLines(quality)}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "code",
              head: "Zone",
              names: true,
              cell: (row) => <Link href={`${path}/zones/${row.id}/data-quality`}>{row.code}</Link>,
            },
            { key: "floor", head: "Floor", cell: (row) => row.floor },
            ...KEY_POINTS.map((kind) => ({
              key: kind,
              head: pointWords(kind).replace(/^./, (first) => first.toUpperCase()),
              unit: "%",
              align: "number" as const,
              cell: (row: ReturnType<typeof zoneQualityLines>[number]) => row.cover[kind],
            })),
            {
              key: "severity",
              head: "Weight",
              cell: (row) => (row.severity ? <SeverityMark severity={row.severity} /> : ""),
            },
            { key: "worst", head: "Worst problem", cell: (row) => row.worst },
            { key: "stops", head: "What it disqualifies", cell: (row) => row.stops },
            { key: "problems", head: "Problems", align: "number", cell: (row) => row.problems },
          ]}
          empty={
            <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in a table of zones</LinkButton>}>
              No zone yet. Bring in zones and their trend logs, and this page says how good the logs are.
            </EmptyState>
          }
        />
        <p>
          Percentages are the samples that are there of those that should be, over the building&rsquo;s record; of a
          point logged on change of value, the time for which a value is known.
        </p>
      </Section>
      <Section id="building" title="The building as a whole" wide>
        <FindingsList
          label="Findings about the building's trends"
          findings={buildingFindingLines(quality, building)}
          none="Nothing that concerns all zones at once."
        />
      </Section>
      <ImportRemarks
        title="Files that concern no zone"
        none="No import left anything to remark that concerns no zone."
        remarks={quality.remarks}
        buildingPath={path}
        timeZone={building.timeZone}
      />
    </>
  );
}
