import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Notice } from "@/app/_components/ui/notice";
import { Pager } from "@/app/_components/ui/pager";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readHistoryPage } from "@/lib/services/imports/history";
import { readImportsAtWork } from "@/lib/services/trend-imports/at-work";
import { readWeather } from "@/lib/services/weather/read";
import { formatLocal } from "@/lib/time/format";
import { FilesAtWork } from "./_components/files-at-work";
import { UploadForm } from "./_components/upload-form";
import { WaitingFiles } from "./_components/waiting-files";
import { atWorkTitle, outcomeLines, STATE_WORDS, settledFigure, waitingSentence, weatherSentence } from "./view-model";
import { workLines } from "./work-lines";

export const metadata: Metadata = { title: "Imports" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<Record<string, string | undefined>> };

export default async function ImportsPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/imports`;
  const query = await searchParams;
  const outcome = outcomeLines(query.outcome);
  const { building, runs, stretch, waiting, atWork, now, weather } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, id),
      ...readHistoryPage(ctx, id, Number(query.page ?? 1)),
      atWork: readImportsAtWork(ctx, id),
      now: ctx.now,
      weather: readWeather(ctx, id),
    }),
    path,
  );
  const waits = waitingSentence(waiting.length);
  return (
    <>
      <PageHeading
        title="Imports"
        lede="Trend logs, weather and tables come in here. Every file is kept as it came, and every row's fate is on record."
      />
      {outcome.map((line) => (
        <Notice key={line.key} kind={line.kind} title={line.title}>
          <p>{line.message}</p>
        </Notice>
      ))}
      {waits ? (
        <Notice
          kind="note"
          title={waits}
          action={
            <LinkButton kind="primary" href={`${path}/mapping`}>
              Map the points
            </LinkButton>
          }
        >
          <p>Nothing is stored until someone has said which zone each point belongs to.</p>
          <WaitingFiles runs={waiting} path={path} timeZone={building.timeZone} />
        </Notice>
      ) : null}
      {atWork.length > 0 ? (
        <Section id="work" title={atWorkTitle(atWork.length)} wide>
          <FilesAtWork lines={workLines(atWork, now)} path={path} />
        </Section>
      ) : null}
      <Section
        id="upload"
        title="Bring files in"
        remarks={
          <>
            <Remark title="Weather">{weatherSentence(weather)}</Remark>
            <Remark title="Mapping">
              <Link href={`${path}/profiles`}>Profiles</Link> say how the files of a source are mapped.
            </Remark>
            <Remark title="Programs">
              <Link href={`${path}/collectors`}>Collectors</Link> bring trend files and readings by themselves.
            </Remark>
            <Remark title="Templates">
              <a href={`${path}/templates/zones`}>zones</a>, <a href={`${path}/templates/desks`}>desks</a>,{" "}
              <a href={`${path}/templates/devices`}>devices</a>, <a href={`${path}/templates/bills`}>bills</a>
            </Remark>
          </>
        }
      >
        <UploadForm action={`${path}/upload`} />
      </Section>
      <Section id="history" title="History" wide>
        <DataTable
          caption="Files brought in, newest first"
          captionHidden
          rows={runs}
          rowKey={(run) => run.id}
          columns={[
            {
              key: "file",
              head: "File",
              names: true,
              cell: (run) => <Link href={`${path}/${run.id}`}>{run.fileName}</Link>,
            },
            { key: "kind", head: "Holds", cell: (run) => run.kind },
            { key: "state", head: "State", cell: (run) => STATE_WORDS[run.state] },
            { key: "rows", head: "Rows", align: "number", cell: (run) => settledFigure(run, run.rowsInFile) },
            {
              key: "taken",
              head: "Taken",
              align: "number",
              cell: (run) => settledFigure(run, run.rowsAccepted + run.rowsRepaired),
            },
            {
              key: "left",
              head: "Not taken",
              align: "number",
              cell: (run) => settledFigure(run, run.rowsHeldBack + run.rowsRejected + run.rowsIgnored),
            },
            { key: "added", head: "Added", align: "number", cell: (run) => settledFigure(run, run.samplesAdded) },
            { key: "changed", head: "Changed", align: "number", cell: (run) => settledFigure(run, run.samplesChanged) },
            { key: "by", head: "By", cell: (run) => run.startedBy },
            { key: "at", head: "When", cell: (run) => formatLocal(run.startedAtMs, building.timeZone, "date-time") },
          ]}
          empty={
            <EmptyState>
              No file yet. Zones first, then trend logs and a weather year; desks and devices as you have them.
            </EmptyState>
          }
        />
        <Pager many="files" shown={runs.length} {...stretch} href={(page) => `${path}?page=${page}#history`} />
      </Section>
    </>
  );
}
