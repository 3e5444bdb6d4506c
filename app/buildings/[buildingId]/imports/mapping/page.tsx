import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Notice } from "@/app/_components/ui/notice";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import type { Context } from "@/lib/services/context";
import { readOrderMeanings } from "@/lib/services/trend-imports/answer-meanings";
import { isSureProposal } from "@/lib/services/trend-imports/bulk-step";
import { readStandingCautions } from "@/lib/services/trend-imports/enter-mapping";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { readPlaces } from "@/lib/services/zones/places";
import { MappingForm } from "./_components/mapping-form";
import { mappingAction } from "./actions";
import { filterFrom, linesShown, rowsPerPage } from "./filter";
import { fileQuestions } from "./questions";
import { mappingLede, mappingRow } from "./view-model";

export const metadata: Metadata = { title: "Map the points" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<Record<string, string | undefined>> };

async function load(ctx: Context, id: number) {
  const building = readBuilding(ctx, id);
  const task = readMappingTask(ctx, id);
  const meanings = await readOrderMeanings(ctx, id, task);
  return { building, task, meanings, places: readPlaces(ctx, id), cautions: readStandingCautions(ctx, id, task) };
}

export default async function MappingPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/imports`;
  const { building, task, meanings, places, cautions } = await readAs((ctx) => load(ctx, id), `${path}/mapping`);
  if (task.waiting.length === 0) {
    return (
      <>
        <PageHeading title="Map the points" />
        <EmptyState action={<LinkButton href={path}>Back to imports</LinkButton>}>
          No file waits for its mapping.
        </EmptyState>
      </>
    );
  }
  const filter = filterFrom(await searchParams, task.profileNotes.length > 0);
  const shown = linesShown(task.lines, filter);
  const perPage = rowsPerPage(places.zones.length);
  const pages = Math.max(1, Math.ceil(shown.length / perPage));
  const page = Math.min(filter.page, pages);
  const fileNames = new Map(task.waiting.map((run) => [run.id, run.fileName]));
  const rows = shown
    .slice((page - 1) * perPage, page * perPage)
    .map((line, index) => mappingRow(line, index, { timeZone: building.timeZone, fileNames }));
  return (
    <>
      <PageHeading title="Map the points" lede={mappingLede(task)} />
      {task.profileNotes.slice(0, 5).map(({ runId, fileName, sentence }) => (
        <Notice key={runId} kind="note" title={fileName}>
          <p>{sentence}</p>
        </Notice>
      ))}
      <MappingForm
        action={mappingAction.bind(null, id)}
        rows={rows}
        filter={{ ...filter, page }}
        count={{ shown: shown.length, all: task.lines.length, pages, perPage }}
        sure={task.lines.filter(isSureProposal).length}
        lastStep={task.lastStep}
        questions={fileQuestions(task.fileAsks, meanings, building.timeZone)}
        sources={task.sources}
        cautions={cautions}
        zones={places.zones}
        profilesPath={`${path}/profiles`}
      />
    </>
  );
}
