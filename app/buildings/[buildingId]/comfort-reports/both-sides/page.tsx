import type { Metadata } from "next";
import { BothSidesChart } from "@/app/_components/charts/both-sides-chart";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { LEAST_PEOPLE } from "@/lib/comfort-reports/disclosure/disclose-counts";
import { readBothSides } from "@/lib/services/both-sides/expect";
import { sharesByAir, sideWorkings } from "@/lib/services/both-sides/workings";
import { readBuilding } from "@/lib/services/buildings/find";
import { standingNote } from "../../standing-note";
import { AirTable } from "./_components/air-table";
import { SideWorkingSheets } from "./_components/side-working-sheets";
import { airLines, pictureLabel, recordWords, shareLines, sideLines, sidesLede } from "./view-model";

export const metadata: Metadata = { title: "Both sides of a temperature" };

type Props = { params: Promise<{ buildingId: string }> };

/** What a warmer or cooler zone air would bring on both sides: reports of too cold and of too warm, side by side. */
export default async function BothSidesPage({ params }: Props) {
  const { buildingId } = await params;
  const path = `/buildings/${buildingId}`;
  const here = `${path}/comfort-reports/both-sides`;
  const { building, sides, isOfTooFew, lines, points, source, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, Number(buildingId));
    const { sides, isOfTooFew, source, kept } = await readBothSides(ctx, building.id);
    const workings = sides ? sideWorkings(sides) : [];
    return {
      building,
      sides,
      isOfTooFew,
      lines: sides ? sideLines(sides, building.temperatureUnit).map((line, k) => ({ ...line, own: workings[k] })) : [],
      points: sides ? sharesByAir(sides) : [],
      source,
      note: standingNote(ctx, building, { "both-sides": kept }),
    };
  }, here);
  if (isOfTooFew)
    return (
      <>
        <PageHeading title="Both sides of a temperature" lede={sidesLede(null, building.temperatureUnit)} />
        <StandingNote note={note} />
        <EmptyState action={<LinkButton href={`${path}/comfort-reports/links`}>Links for occupants</LinkButton>}>
          Fewer than {LEAST_PEOPLE.screen} people have reported so far: figures about so few are not shown.
        </EmptyState>
      </>
    );
  const air = sides ? airLines(sides, building.temperatureUnit) : [];
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
          rows={lines}
          rowKey={(row) => row.key}
          detail={({ own, shiftK }) =>
            own
              ? {
                  summary: "Working",
                  content: <SideWorkingSheets workings={own} here={here} shiftK={shiftK} buildingPath={path} />,
                }
              : null
          }
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
      {points.length > 0 ? (
        <Section
          id="shares"
          title="Who wants it warmer and who cooler, by zone air"
          wide
          remarks={
            <Remark title="How to read it">
              Of the people there at a temperature, the share with each wish, with the range in which it lies with a
              chance of 90 %. Behind, as steps, the occupied desk-hours that the last year&rsquo;s cooling season had at
              each degree: where there are few, the lines rest on the field votes.
            </Remark>
          }
        >
          <BothSidesChart
            label={pictureLabel(points, building.temperatureUnit)}
            points={points}
            temperatureUnit={building.temperatureUnit}
          >
            <DataTable
              caption="Shares with each wish and desk-hours by zone air, cooling season"
              rows={shareLines(points, building.temperatureUnit)}
              rowKey={(row) => row.key}
              columns={[
                { key: "air", head: "Zone air", names: true, align: "number", cell: (row) => row.air },
                { key: "warmer", head: "Want it warmer (90 % range)", align: "number", cell: (row) => row.warmer },
                { key: "cooler", head: "Want it cooler (90 % range)", align: "number", cell: (row) => row.cooler },
                { key: "hours", head: "Desk-hours", unit: "h a year", align: "number", cell: (row) => row.hours },
              ]}
            />
          </BothSidesChart>
        </Section>
      ) : null}
      {air.length > 0 ? (
        <Section
          id="air"
          title="Mean, spread and swing of the zones&rsquo; air"
          wide
          remarks={
            <>
              <Remark title="What they do">
                People complain when the air crosses the temperature that is too much for them. It does so less often on
                the side that the mean moves away from and more often on the other; on both sides less often the
                narrower the air spreads and the slower it swings. A zone high in this list may gain more from steadier
                control than from another setpoint.
              </Remark>
              <Remark title="How far to trust it">
                Rice&rsquo;s formula for crossings, as Federspiel (2000) used it for complaints: it gives directions and
                no counts, since the temperatures at which people complain are not known.
              </Remark>
            </>
          }
        >
          <AirTable lines={air} />
        </Section>
      ) : null}
    </>
  );
}
