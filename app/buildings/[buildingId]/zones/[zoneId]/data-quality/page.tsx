import type { Metadata } from "next";
import { CoverageCalendar } from "@/app/_components/charts/coverage-calendar";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { ZONE_QUALITY } from "@/lib/services/data-quality/read";
import { readKept } from "@/lib/services/kept/read-kept";
import { readZone } from "@/lib/services/zones/find";
import { ImportRemarks } from "../../../data-quality/_components/import-remarks";
import { pointWords } from "../../../data-quality/view-model";
import { standingNote } from "../../../standing-note";
import { calendarLabel, gapLines, type PoorDays, poorDays, problemLines, zoneQualityLede } from "./view-model";

export const metadata: Metadata = { title: "Data quality of a zone" };

type Props = { params: Promise<{ buildingId: string; zoneId: string }> };

export default async function ZoneDataQualityPage({ params }: Props) {
  const { buildingId, zoneId } = await params;
  const id = Number(buildingId);
  const path = `/buildings/${id}`;
  const { building, zone, quality, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const zone = readZone(ctx, id, Number(zoneId));
    const kept = await readKept(ctx, id, ZONE_QUALITY, String(zone.id));
    const note = standingNote(ctx, building, { [`${ZONE_QUALITY.name}/${zone.id}`]: kept });
    return { building, zone, quality: kept.result, note };
  }, `${path}/zones/${zoneId}/data-quality`);
  if (!quality) {
    return (
      <>
        <PageHeading title={`Data quality of zone ${zone.code}`} />
        <StandingNote note={note} />
      </>
    );
  }
  const { days } = quality;
  const gaps = gapLines(quality, building);
  const poor = poorDays(quality);
  return (
    <>
      <PageHeading title={`Data quality of zone ${zone.code}`} lede={zoneQualityLede(quality)} />
      <StandingNote note={note} />
      <Section
        id="problems"
        title="Problems, and what they disqualify"
        wide
        action={<LinkButton href={`${path}/zones/${zone.id}`}>Zone {zone.code}</LinkButton>}
      >
        <FindingsList
          label="Problems of the zone's record"
          findings={problemLines(quality, building)}
          none="No problem was found in the record of this zone."
        />
      </Section>
      <Section id="calendar" title="Samples by day" wide>
        {days.length === 0 ? (
          <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in trend logs</LinkButton>}>
            No trend of this zone yet.
          </EmptyState>
        ) : (
          <CoverageCalendar
            label={calendarLabel(quality)}
            firstDay={quality.firstDay}
            rows={days.map(({ pointId, kind, shares }) => ({
              key: pointId,
              name: pointWords(kind),
              shares: [...shares],
            }))}
          >
            <Disclosure summary="The days below 95 % as a table">
              <DataTable
                caption={`Share of the expected samples by day; the other ${poor.completeDays} of ${quality.dayCount} days have 95\u202f% or more of every point`}
                rows={poor.rows}
                rowKey={(row) => row.key}
                columns={[
                  { key: "days", head: "Day", names: true, cell: (row) => row.days },
                  ...days.map(({ pointId, kind }, at) => ({
                    key: String(pointId),
                    head: pointWords(kind),
                    unit: "%",
                    align: "number" as const,
                    cell: (row: PoorDays) => row.shares[at],
                  })),
                ]}
                empty={<p>Every day has 95 % or more of the samples of every point.</p>}
              />
            </Disclosure>
          </CoverageCalendar>
        )}
      </Section>
      <Section id="gaps" title="Gaps, longest first" wide>
        <DataTable
          caption="Gaps of the zone's points"
          captionHidden
          rows={gaps.lines}
          rowKey={(row) => row.key}
          columns={[
            { key: "points", head: "Points", names: true, cell: (row) => row.points },
            { key: "from", head: "From", cell: (row) => row.from },
            { key: "to", head: "To", cell: (row) => row.to },
            { key: "hours", head: "Length", unit: "h", align: "number", cell: (row) => row.hours },
            { key: "fate", head: "What happens to it", cell: (row) => row.fate },
          ]}
          empty={<p>No gap of an hour or more.</p>}
        />
        {gaps.more > 0 ? <p>{gaps.more} more of an hour and longer are not listed.</p> : null}
        {quality.shorterGaps > 0 ? (
          <p>
            {quality.shorterGaps} shorter {quality.shorterGaps === 1 ? "gap" : "gaps"} besides, mostly single lost
            samples; they are left out as well.
          </p>
        ) : null}
      </Section>
      <ImportRemarks
        title="What imports found"
        none="No import left anything to remark about this zone's points."
        remarks={quality.remarks}
        buildingPath={path}
        timeZone={building.timeZone}
      />
    </>
  );
}
