import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { STATE_WORDS } from "@/lib/comfort-reports/report-state";
import { voteWords } from "@/lib/comfort-reports/thermal-sensation";
import { readBuilding } from "@/lib/services/buildings/find";
import { readReportConditions } from "@/lib/services/comfort-reports/conditions";
import { readReportSteps } from "@/lib/services/comfort-reports/take-step";
import { readMailServer } from "@/lib/services/report-mail/server";
import { formatLocal } from "@/lib/time/format";
import { quantityWords } from "@/lib/trends/quantity-words";
import { remarksOf, WISH } from "../view-model";
import { MovingAir } from "./_components/moving-air";
import { StepForm } from "./_components/step-form";
import { StepTable } from "./_components/step-table";
import { takeStepAction } from "./actions";
import {
  airSpeedOf,
  answerHint,
  controlSentence,
  draughtSentence,
  FAN_POWER_WORDS,
  FELT_CAUTION,
  fanLines,
  feltSentence,
  inputLine,
  readingLine,
  stepLines,
} from "./view-model";

export const metadata: Metadata = { title: "Comfort report" };

type Props = {
  params: Promise<{ buildingId: string; reportId: string }>;
  searchParams: Promise<{ airSpeed?: string | string[] }>;
};

/** One report, with what the zone was like when it was made. */
export default async function ComfortReportPage({ params, searchParams }: Props) {
  const { buildingId, reportId } = await params;
  const { airSpeed } = await searchParams;
  const path = `/buildings/${buildingId}`;
  const { building, conditions, steps, mailServer } = await readAs(
    async (ctx) => ({
      building: readBuilding(ctx, Number(buildingId)),
      steps: readReportSteps(ctx, Number(buildingId), Number(reportId)),
      mailServer: readMailServer(ctx, Number(buildingId)),
      conditions: await readReportConditions(ctx, Number(buildingId), Number(reportId), {
        airSpeedMps: airSpeedOf(airSpeed),
      }),
    }),
    `${path}/comfort-reports/${reportId}`,
  );
  const { report, readings, felt } = conditions;
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  const place = report.deskCode ? `desk ${report.deskCode}, zone ${report.zoneCode}` : `zone ${report.zoneCode}`;
  const remarks = remarksOf(report);
  return (
    <>
      <PageHeading
        title={`${voteWords(report.thermalSensation)} at ${place}`}
        lede={`Reported on ${formatLocal(report.reportedAtMs, building.timeZone, "date-time-zone")}; would like it ${WISH[report.preference]}${remarks ? `; ${remarks}` : ""}.`}
      />
      <Section
        id="then"
        title="What the zone was like"
        wide
        remarks={
          <Remark title="Where to look next">
            <Link href={`${path}/zones/${report.zoneId}`}>Zone {report.zoneCode}</Link> has its timeline and why it is
            cold; <Link href={`${path}/zones/${report.zoneId}/data-quality`}>its data quality</Link> says whether its
            sensor can be trusted.
          </Remark>
        }
      >
        <p>{controlSentence(conditions)}</p>
        <DataTable
          caption="Trends at the moment of the report"
          captionHidden
          rows={readings.map((reading) => readingLine(reading, words))}
          rowKey={(row) => row.kind}
          columns={[
            { key: "kind", head: "Trend", names: true, cell: (row) => row.kind },
            { key: "then", head: "Then", align: "number", cell: (row) => row.atReport },
            { key: "mean", head: "Mean of the hour before", align: "number", cell: (row) => row.hourMean },
            { key: "age", head: "Age of the sample", align: "number", cell: (row) => row.age },
            { key: "point", head: "Point", cell: (row) => row.point },
          ]}
          empty={<EmptyState>No trend of this zone reaches to that moment.</EmptyState>}
        />
      </Section>
      {felt ? (
        <Section
          id="felt"
          title="What the standard's method expects"
          wide
          remarks={<Remark title="Mind">{FELT_CAUTION}</Remark>}
        >
          <p>{feltSentence(felt, voteWords(report.thermalSensation))}</p>
          <DataTable
            caption="What it rests on"
            rows={felt.inputs.map((input) => inputLine(input, words))}
            rowKey={(row) => row.what}
            columns={[
              { key: "what", head: "Input", names: true, cell: (row) => row.what },
              { key: "value", head: "Taken", align: "number", cell: (row) => row.value },
              { key: "range", head: "Range", align: "number", cell: (row) => row.range },
              { key: "origin", head: "Origin", cell: (row) => row.origin },
              { key: "source", head: "Source", cell: (row) => row.source },
            ]}
          />
        </Section>
      ) : null}
      {felt ? (
        <Section
          id="air"
          title="Moving air"
          wide
          remarks={
            <Remark title="How it is counted">
              By ASHRAE 55: the kelvins that still air would have to be cooler to feel the same, for the middle of what
              stands above; two ways of counting one&rsquo;s own movement give the range. The draught rate is ISO
              7730&rsquo;s.
            </Remark>
          }
        >
          <MovingAir
            fan={report.thermalSensation > 0 || report.preference === "cooler" ? fanLines(felt, words) : []}
            fanPower={FAN_POWER_WORDS}
            airSpeed={[airSpeed].flat()[0] ?? ""}
            draught={draughtSentence(felt, airSpeedOf(airSpeed), words)}
          />
        </Section>
      ) : null}
      <Section id="steps" title={`What was done: ${STATE_WORDS[report.state]}`} wide>
        <StepTable lines={stepLines(steps, building.timeZone)} />
      </Section>
      <Section id="next-step" title="Next step">
        <StepForm
          key={steps.length}
          action={takeStepAction.bind(null, {
            buildingId: building.id,
            reportId: report.id,
            timeZone: building.timeZone,
          })}
          state={report.state}
          answerHint={answerHint({
            isFollowed: report.followToken !== null,
            isMailed: report.replyAddress !== null && mailServer !== null,
          })}
        />
      </Section>
    </>
  );
}
