import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readImportRun } from "@/lib/services/imports/history";
import { formatLocal } from "@/lib/time/format";
import { STATE_WORDS } from "../view-model";
import { findingLines, rowItems } from "./view-model";

export const metadata: Metadata = { title: "Import" };

type Props = { params: Promise<{ buildingId: string; runId: string }> };

export default async function ImportRunPage({ params }: Props) {
  const { buildingId, runId } = await params;
  const id = Number(buildingId);
  const { building, run, rows } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), ...readImportRun(ctx, id, Number(runId)) }),
    `/buildings/${buildingId}/imports/${runId}`,
  );
  return (
    <>
      <PageHeading title={run.fileName} lede={run.message || `This file ${STATE_WORDS[run.state]}.`} />
      <Section id="fate" title="What became of it" plain>
        <DefinitionList
          items={[
            { term: "State", value: STATE_WORDS[run.state] },
            { term: "Holds", value: run.kind },
            ...rowItems(run),
            {
              term: "Brought in",
              value: `${formatLocal(run.startedAtMs, building.timeZone, "date-time")} by ${run.startedBy}`,
            },
            { term: "Bytes and SHA-256", value: `${run.byteCount}, ${run.sha256.slice(0, 16)}\u2026` },
          ]}
        />
      </Section>
      <Section id="findings" title="Findings" plain>
        <FindingsList label="Findings about the file" findings={findingLines(run)} none="Nothing to remark." />
      </Section>
      {rows.length > 0 ? (
        <Section id="rows" title="Rows not plainly accepted" wide>
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
        </Section>
      ) : null}
    </>
  );
}
