import type { Queryable } from "@/db/client";
import { type ImportRunRow, listRunsToMap } from "@/db/queries/import-runs";
import type { TrendAsk } from "@/lib/importers/trend-csv/trend-file";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { isOnePoint, proposeProfileName, shapeOf, sourceKey } from "../mapping-profiles/file-shape";
import type { Difference } from "../mapping-profiles/profile-fit";
import { readProfiles, type Settlement, settlementOf } from "../mapping-profiles/settle";
import { answerTo } from "./answer-to";
import { type MappingDraft, readMappingDraft } from "./mapping-draft";
import { type LineState, lineStateOf, profileChoiceOf } from "./mapping-entry";
import { inspectionOf, linesOf, type MappingLine, readLineBasis } from "./mapping-lines";
import type { FileAnswers } from "./run-input";

/** A line with what stands in it and, when a profile does not settle it any more, why. */
export type StatedLine = MappingLine & { state: LineState; differs: string | null };

export type FileAsk = {
  runId: number;
  fileName: string;
  ask: TrendAsk;
  /** As entered or as a profile answers it. */
  given: FileAnswers;
  byProfile: boolean;
  /** Key of the file's source: files of one source are asked together. */
  source: string;
};

/** Files of one source, and the name under which their mapping may be kept. */
export type MappingSource = { key: string; name: string; fileNames: string[]; points: number; onePoint: boolean };

export type MappingTask = {
  lines: StatedLine[];
  /** Questions about a whole file: order of day and month, clock, value column. */
  fileAsks: FileAsk[];
  waiting: ImportRunRow[];
  sources: MappingSource[];
  /** Which profile was applied to which file and what no longer fits. */
  profileNotes: { runId: number; fileName: string; sentence: string; differences: Difference[] }[];
  /** The last change of many rows, in words; null when there is none to take back. */
  lastStep: string | null;
};

/** What a person has to confirm before the waiting trend files, or those of the given runs, are imported. */
export function readMappingTask(ctx: Context, buildingId: number, runIds?: readonly number[]): MappingTask {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return mappingTaskOf(ctx.db, buildingId, readMappingDraft(ctx.db, buildingId), runIds);
}

/** The task as it stands with a draft. */
export function mappingTaskOf(
  db: Queryable,
  buildingId: number,
  draft: MappingDraft,
  runIds?: readonly number[],
): MappingTask {
  const waiting = listRunsToMap(db, buildingId, runIds);
  const basis = readLineBasis(db, buildingId, waiting.map(inspectionOf));
  const profiles = waiting.length > 0 ? readProfiles(db, buildingId) : [];
  const settlements = new Map(
    waiting.map((run) => [run.id, settlementOf(profiles, basis, { id: run.id, inspection: inspectionOf(run) })]),
  );
  const entered = Object.entries(draft.entries).flatMap(([name, { zoneId }]) =>
    zoneId === null ? [] : [{ name, zoneId }],
  );
  const lines = linesOf(basis, waiting, entered).map((line): StatedLine => {
    const profile = profileChoiceOf(line, settlements);
    return { ...line, state: lineStateOf(line, draft.entries[line.name], profile), differs: profile?.sentence ?? null };
  });
  return {
    lines,
    fileAsks: waiting.flatMap((run) => fileAsksOf(run, settlements.get(run.id), draft)),
    waiting,
    sources: sourcesOf(waiting, settlements, draft),
    profileNotes: waiting.flatMap(({ id: runId, fileName }) => {
      const settlement = settlements.get(runId);
      if (!settlement || settlement.status === "none") return [];
      return { runId, fileName, sentence: settlement.sentence, differences: settlement.differences };
    }),
    lastStep: draft.lastStep?.words ?? null,
  };
}

function fileAsksOf(run: ImportRunRow, settlement: Settlement | undefined, draft: MappingDraft): FileAsk[] {
  const entered = draft.answersByRun[String(run.id)] ?? {};
  const answered = settlement && settlement.status !== "none" ? settlement.answers.file : {};
  const source = sourceKey(inspectionOf(run));
  return inspectionOf(run)
    .ask.filter((ask) => ask.what !== "unit")
    .map((ask) => ({
      runId: run.id,
      fileName: run.fileName,
      ask,
      source,
      given: { ...answered, ...entered },
      byProfile: answerTo(ask, answered) !== null && answerTo(ask, entered) === null,
    }));
}

function sourcesOf(
  waiting: readonly ImportRunRow[],
  settlements: ReadonlyMap<number, Settlement>,
  draft: MappingDraft,
): MappingSource[] {
  const groups = new Map<string, { runs: ImportRunRow[]; known: string | null; points: number; onePoint: boolean }>();
  for (const run of waiting) {
    const inspection = inspectionOf(run);
    const key = sourceKey(inspection);
    const settlement = settlements.get(run.id);
    const known = settlement && settlement.status !== "none" ? settlement.profile.name : null;
    const onePoint = isOnePoint(shapeOf(inspection).layout);
    const group = groups.get(key) ?? { runs: [], known: null, points: 0, onePoint };
    group.runs.push(run);
    group.known ??= known;
    group.points = onePoint ? group.points + inspection.points.length : inspection.points.length;
    groups.set(key, group);
  }
  const taken = new Set<string>();
  return [...groups].map(([key, { runs, known, points, onePoint }]) => {
    const fileNames = runs.map((run) => run.fileName);
    const proposed =
      known ?? (onePoint && runs.length > 1 ? "one point a file" : proposeProfileName(fileNames.at(-1) ?? ""));
    const name = draft.profileNames[key] ?? freeName(proposed, taken);
    taken.add(name);
    return { key, name, fileNames, points, onePoint };
  });
}

/** The name, or the first numbered one that no other source of the same page has. */
function freeName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  let number = 2;
  while (taken.has(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}
