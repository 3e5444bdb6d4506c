import type { Metadata } from "next";
import Link from "next/link";
import { Quantity } from "@/app/_components/quantity/quantity";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { plugFindingText } from "@/lib/electrical/plug-log/findings";
import type { Finding } from "@/lib/findings/finding";
import { type PlugReadFindingCode, plugReadFindingText } from "@/lib/importers/plug-log/plug-log-read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readPlugLogView } from "@/lib/services/plug-logs/read";
import { formatLocal, formatLocalDate } from "@/lib/time/format";
import { removeAction, reviewAction, setSeasonAction } from "../actions";
import { logLede, logSpan, offeredSeason, rawWords } from "../view-model";
import { DayProfile } from "./_components/day-profile";
import { DaysTable } from "./_components/days-table";
import { LevelTable } from "./_components/level-table";
import { LogFigures } from "./_components/log-figures";
import { RemoveForm, ReviewForm } from "./_components/review-forms";
import { SeasonForm } from "./_components/season-form";

export const metadata: Metadata = { title: "Plug log" };

type Props = { params: Promise<{ buildingId: string; deviceId: string; logId: string }> };

/** What was found in one plug log, with the working under every figure. */
export default async function PlugLogPage({ params }: Props) {
  const { buildingId, deviceId, logId } = await params;
  const ids = { buildingId: Number(buildingId), deviceId: Number(deviceId), logId: Number(logId) };
  const base = `/buildings/${buildingId}`;
  const path = `${base}/devices/${deviceId}/plug-logs`;
  const { building, device, log, rawDays } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, ids.buildingId),
      ...readPlugLogView(ctx, ids.buildingId, ids.deviceId, ids.logId),
    }),
    `${path}/${logId}`,
  );
  const { figures, season, workings } = log;
  const { timeZone } = building;
  const stands = log.standsFrom && log.standsTo ? { from: log.standsFrom, to: log.standsTo } : offeredSeason(log);
  const findings = [
    ...figures.findings.map((finding) => ({ ...finding, sentence: plugFindingText(finding) })),
    ...figures.readFindings.map((finding) => ({
      ...finding,
      sentence: plugReadFindingText(finding as Finding<PlugReadFindingCode>),
    })),
  ];
  return (
    <>
      <PageHeading title={`Plug log of ${device.label}`} lede={logLede(log)} />
      <Section
        id="levels"
        title="Settings found in the readings"
        wide
        action={<Link href={path}>All logs of {device.label}</Link>}
      >
        <LevelTable states={figures.states} workings={workings.states} buildingPath={base} />
        <LogFigures figures={figures} workings={workings} buildingPath={base} timeZone={timeZone} />
        <FindingsList
          label="What there is to know about this log"
          findings={findings.map(({ code, severity, sentence }) => ({ key: code + sentence, severity, sentence }))}
        />
      </Section>
      <Section id="day" title="Profile of the day" wide>
        <DayProfile profile={figures.profile} label={`Mean power of ${device.label} by hour of the day`} />
      </Section>
      <Section id="season" title="What it stands for">
        {season?.status === "ok" && workings.season ? (
          <WorkingDisclosure working={workings.season} buildingPath={base}>
            <Quantity value={season.energyKwh.value} unit="kWh" digits={{ significant: 3 }} /> from
            {` ${formatLocalDate(season.fromDate)} to ${formatLocalDate(season.toDate)} `}(90 % interval{" "}
            <Quantity value={season.energyKwh.low} unit="" digits={{ significant: 3 }} /> to{" "}
            <Quantity value={season.energyKwh.high} unit="kWh" digits={{ significant: 3 }} />)
          </WorkingDisclosure>
        ) : null}
        {season?.status === "refused" ? <p role="status">{season.message}</p> : null}
        <SeasonForm action={setSeasonAction.bind(null, ids)} stands={stands} />
        <DaysTable days={figures.days} workings={workings.days} buildingPath={base} />
      </Section>
      <Section id="review" title="Review">
        <DefinitionList
          items={[
            { term: "File", value: log.fileName, note: `${figures.rows.inFile} rows` },
            {
              term: "Rows",
              value: `${figures.rows.accepted} taken, ${figures.rows.repaired} repaired, ${figures.rows.rejected} rejected, ${figures.rows.ignored} ignored`,
            },
            { term: "Readings", value: logSpan(log, timeZone) },
            { term: "Raw readings", value: rawWords(log, timeZone), note: `after ${rawDays} days at the latest` },
            {
              term: "Reviewed",
              value: log.reviewedAtMs
                ? `${formatLocal(log.reviewedAtMs, timeZone, "date-time")} by ${log.reviewedBy}`
                : "not yet",
            },
          ]}
        />
        {figures.notes.length > 0 ? (
          <ul>
            {figures.notes.slice(0, 20).map((note) => (
              <li key={`${note.line}-${note.fate}`}>{note.message}</li>
            ))}
          </ul>
        ) : null}
        <ReviewForm
          action={reviewAction.bind(null, ids)}
          canTakeOver={season?.status === "ok"}
          rawKept={log.rawDeletedAtMs === null}
        />
        <RemoveForm action={removeAction.bind(null, ids)} />
      </Section>
    </>
  );
}
