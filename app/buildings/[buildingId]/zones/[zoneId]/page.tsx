import type { Metadata } from "next";
import Link from "next/link";
import { WeekHourHeatMap } from "@/app/_components/charts/week-hour-heat-map";
import { ZoneTimeChart } from "@/app/_components/charts/zone-time-chart";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readZoneVerdictRecord } from "@/lib/services/zone-verdicts/read";
import { readZoneDays } from "@/lib/services/zones/days";
import { readZoneHistory } from "@/lib/services/zones/history";
import { readZonesOverview } from "@/lib/services/zones/overview";
import { formatTemperature } from "@/lib/units/format";
import { ZoneForm } from "../_components/zone-form";
import { noteVerdictAction, reviseZoneAction } from "../actions";
import { formFromZone } from "../form";
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
  const { building, history, days, overview, record } = await readAs(
    async (ctx) => ({
      building: readBuilding(ctx, id),
      history: await readZoneHistory(ctx, id, Number(zoneId), wanted),
      days: await readZoneDays(ctx, id, Number(zoneId)),
      record: await readZoneVerdictRecord(ctx, id, Number(zoneId)),
      overview: (await readZonesOverview(ctx, id)).zones.find((each) => each.zone.id === Number(zoneId)),
    }),
    `${path}/zones/${zoneId}`,
  );
  const { zone } = history;
  const target = formatTemperature(building.targetZoneAirTempC, building.temperatureUnit).text;
  const differences = weekDifferences(overview, building.targetZoneAirTempC);
  return (
    <>
      <PageHeading
        title={zone.name ? `Zone ${zone.code}, ${zone.name}` : `Zone ${zone.code}`}
        lede={zoneLede(overview, building)}
      />
      <Section id="why" title="Why, as far as the data says" wide>
        <FindingsList label="Causes" findings={causeLines(overview, building)} none={noCauseWords(overview)} />
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
          action={reviseZoneAction.bind(null, id, zone.id, building.areaUnit)}
          areaUnit={building.areaUnit}
          values={formFromZone(zone, building.areaUnit)}
          submitLabel="Save"
        />
      </Section>
    </>
  );
}
