import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { Pager } from "@/app/_components/ui/pager";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readImportRun } from "@/lib/services/imports/history";
import { readRunProfileSentences } from "@/lib/services/mapping-profiles/manage";
import { isUnsettled } from "@/lib/services/trend-imports/settle-run";
import { CANCELLABLE, UNDOABLE, whyNotUndone } from "@/lib/services/trend-imports/withdraw";
import { formatLocal } from "@/lib/time/format";
import { FilesAtWork } from "../_components/files-at-work";
import { OneButtonForm } from "../_components/one-button-form";
import { STATE_WORDS } from "../view-model";
import { workLines } from "../work-lines";
import { repeatImportAction } from "./actions";
import { canRepeat, findingLines, rowItems, rowsTitle } from "./view-model";

export const metadata: Metadata = { title: "Import" };

type Props = {
  params: Promise<{ buildingId: string; runId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

export default async function ImportRunPage({ params, searchParams }: Props) {
  const { buildingId, runId } = await params;
  const [id, page] = [Number(buildingId), Number((await searchParams).page ?? 1)];
  const imports = `/buildings/${buildingId}/imports`;
  const path = `${imports}/${runId}`;
  const { building, run, rows, stretch, whyNot, now, profile } = await readAs(async (ctx) => {
    const read = readImportRun(ctx, id, Number(runId), page);
    const isUndoable = read.run.kind === "trends" && UNDOABLE.includes(read.run.state);
    const whyNot = isUndoable ? await whyNotUndone(ctx, id, Number(runId)) : null;
    const profile = readRunProfileSentences(ctx, Number(runId));
    return { building: readBuilding(ctx, id), ...read, whyNot, now: ctx.now, profile };
  }, path);
  const isTrends = run.kind === "trends";
  const atWork = isTrends && isUnsettled(run);
  const changed = run.samplesAdded + run.samplesChanged > 0 || run.state !== "done";
  const undoes = isTrends && !atWork && UNDOABLE.includes(run.state) && changed;
  return (
    <>
      <PageHeading title={run.fileName} lede={run.message || `This file ${STATE_WORDS[run.state]}.`} />
      {atWork ? (
        <Section id="work" title="At work" wide>
          <FilesAtWork lines={workLines([run], now)} path={imports} only={run.id} />
        </Section>
      ) : null}
      <Section id="fate" title="What became of it" plain>
        <DefinitionList
          items={[
            { term: "State", value: STATE_WORDS[run.state] },
            { term: "Holds", value: run.kind },
            ...rowItems(run),
            ...profile.map((value) => ({ term: "Mapping", value })),
            {
              term: "Brought in",
              value: `${formatLocal(run.startedAtMs, building.timeZone, "date-time")} by ${run.startedBy}`,
            },
            { term: "Bytes and SHA-256", value: `${run.byteCount}, ${run.sha256.slice(0, 16)}\u2026` },
            ...(undoes && whyNot !== null ? [{ term: "Undoing", value: whyNot }] : []),
          ]}
        />
        {undoes && whyNot === null ? (
          <p>
            <LinkButton href={`${path}/withdraw`}>Undo this import</LinkButton>
          </p>
        ) : null}
        {run.state === "waiting" && isTrends && CANCELLABLE.includes(run.state) ? (
          <p>
            <LinkButton kind="primary" href={`${imports}/mapping`}>
              Map the points
            </LinkButton>{" "}
            <LinkButton href={`${path}/withdraw`}>Cancel this import</LinkButton>
          </p>
        ) : null}
        {canRepeat(run) ? (
          <OneButtonForm
            action={repeatImportAction.bind(null, id, run.id)}
            label="Try again"
            pendingLabel="Trying again"
          />
        ) : null}
      </Section>
      <Section id="findings" title="Findings" plain>
        <FindingsList label="Findings about the file" findings={findingLines(run)} none="Nothing to remark." />
      </Section>
      {stretch.count > 0 ? (
        <Section id="rows" title={rowsTitle(stretch.count)} wide>
          <DataTable
            caption="Rows by line: at most the first hundred of each kind"
            rows={rows}
            rowKey={(row) => row.id}
            columns={[
              { key: "line", head: "Line", align: "number", names: true, cell: (row) => row.line },
              { key: "fate", head: "Fate", cell: (row) => row.fate.replace("-", " ") },
              { key: "code", head: "Reason", cell: (row) => row.code.replaceAll("-", " ") },
              { key: "excerpt", head: "Row", cell: (row) => row.excerpt },
            ]}
          />
          <Pager many="rows" shown={rows.length} {...stretch} href={(to) => `${path}?page=${to}#rows`} />
        </Section>
      ) : null}
    </>
  );
}
