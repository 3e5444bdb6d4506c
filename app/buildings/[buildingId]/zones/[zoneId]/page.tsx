import type { Metadata } from "next";
import Link from "next/link";
import { WeekHourHeatMap } from "@/app/_components/charts/week-hour-heat-map";
import { ZoneTimeChart } from "@/app/_components/charts/zone-time-chart";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKeptAll } from "@/lib/services/kept/read-kept";
import { readZoneVerdictRecord } from "@/lib/services/zone-verdicts/read";
import { ZONE_DAYS } from "@/lib/services/zones/days";
import { readZoneHistory } from "@/lib/services/zones/history";
import { shownZone, ZONES } from "@/lib/services/zones/shown";
import { formatTemperature } from "@/lib/units/format";
import { standingNote } from "../../standing-note";
import { ZoneForm } from "../_components/zone-form";
import { noteVerdictAction, reviseZoneAction } from "../actions";
import { formFromZone, unitsOf } from "../form";
import { DailyTable } from "./_components/daily-table";
import { LowerMinimum } from "./_components/lower-minimum";
import { PeriodForm } from "./_components/period-form";
import { VerdictNoteForm } from "./_components/verdict-note-form";
import { VerdictNotes } from "./_components/verdict-notes";
import { ZoneRecords } from "./_components/zone-records";
import { lastSaid } from "./verdict-view-model";
import {
  causeLines,
  chartLabel,
  chartSeries,
  dataFindingLines,
  noCauseWords,
  weekDifferences,
  zoneLede,
} from "./view-model";

export const metadata: Metadata = { title: "Zone" };

type Props = {
  params: Promise<{ buildingId: string; zoneId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

export default async function ZonePage({ params, searchParams }: Props) {
  const { buildingId, zoneId } = await params;
  const query = await searchParams;
  const id = Number(buildingId);
  const path = `/buildings/${id}`;
  const wanted = { from: query.from, days: query.days ? Number(query.days) || 14 : undefined };
  const { building, history, days, overview, isWorkedOut, note, record } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const history = await readZoneHistory(ctx, id, Number(zoneId), wanted);
    const part = String(history.zone.id);
    const [zones, days] = await readKeptAll(ctx, id, [{ kind: ZONES }, { kind: ZONE_DAYS, part }]);
    const overview = shownZone(ctx, id, history.zone.id, zones);
    const note = standingNote(ctx, building, { zones, [`${ZONE_DAYS.name}/${part}`]: days });
    const record = await readZoneVerdictRecord(ctx, id, history.zone.id, overview.analysis);
    const isWorkedOut = zones.result !== null;
    return { building, history, days: days.result ?? [], overview, isWorkedOut, note, record };
  }, `${path}/zones/${zoneId}`);
  const { zone } = history;
  const targetZoneAirTempC = zone.targetZoneAirTempC ?? building.targetZoneAirTempC;
  const target = formatTemperature(targetZoneAirTempC, building.temperatureUnit).text;
  const differences = weekDifferences(overview, targetZoneAirTempC);
  return (
    <>
      <PageHeading
        title={zone.name ? `Zone ${zone.code}, ${zone.name}` : `Zone ${zone.code}`}
        lede={isWorkedOut ? zoneLede(overview, { ...building, targetZoneAirTempC }) : undefined}
      />
      <StandingNote note={note} hasFields />
      <Section
        id="why"
        title="Why, as far as the data says"
        wide
        action={<LinkButton href={`${path}/proposals/new?zones=${zone.id}`}>Propose a change</LinkButton>}
      >
        <FindingsList
          label="Causes"
          findings={causeLines(overview, building)}
          none={noCauseWords(overview, isWorkedOut)}
        />
        <LowerMinimum
          prediction={record.prediction}
          verdict={overview?.diagnosis?.verdict ?? null}
          building={building}
          buildingPath={path}
        />
        {overview?.diagnosis ? (
          <p>
            {lastSaid(record.notes, overview.diagnosis.verdict, building.timeZone)}{" "}
            <Link href="#verdict">What was found on site</Link>
          </p>
        ) : null}
      </Section>
      <Section id="history" title="Temperature and setpoints" wide>
        {history.recorded ? (
          <>
            <PeriodForm period={history.period} recorded={history.recorded} />
            <ZoneTimeChart
              label={chartLabel(history)}
              series={chartSeries(history, building)}
              temperatureUnit={building.temperatureUnit}
            >
              <DailyTable history={history} days={days} building={building} />
            </ZoneTimeChart>
            <p>
              The comfort range is the standard&rsquo;s zone for people who type in the clothes of the season, surfaces
              as warm as the air. Field votes disagree with it: air below it is no proof of overcooling.
            </p>
          </>
        ) : (
          <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in trend logs</LinkButton>}>
            No trend of this zone yet.
          </EmptyState>
        )}
      </Section>
      {differences ? (
        <Section id="week" title="Mean week" wide>
          <WeekHourHeatMap
            label={`Mean zone air temperature of zone ${zone.code} by hour of the week, as a difference from ${target}`}
            differencesK={differences}
            reference={`the target of ${target}`}
            temperatureUnit={building.temperatureUnit}
          />
        </Section>
      ) : null}
      <ZoneRecords history={history} building={building} buildingPath={path} />
      {overview?.diagnosis ? (
        <Section id="verdict" title="What was found on site">
          <VerdictNotes notes={record.notes} verdict={overview.diagnosis.verdict} timeZone={building.timeZone} />
          <VerdictNoteForm
            key={record.notes[0]?.id ?? 0}
            action={noteVerdictAction.bind(null, id, zone.id)}
            verdict={overview.diagnosis.verdict}
          />
        </Section>
      ) : null}
      <Section
        id="data"
        title="What to know about the data"
        wide
        action={<LinkButton href={`${path}/zones/${zone.id}/data-quality`}>Data quality</LinkButton>}
      >
        <FindingsList
          label="Findings about the trends"
          findings={dataFindingLines(overview, building)}
          none="Nothing to remark."
        />
      </Section>
      <Section id="describe" title="Describe the zone">
        <ZoneForm
          key={zone.id}
          action={reviseZoneAction.bind(null, id, zone.id, unitsOf(building))}
          units={unitsOf(building)}
          values={formFromZone(zone, unitsOf(building))}
          submitLabel="Save"
        />
      </Section>
    </>
  );
}
