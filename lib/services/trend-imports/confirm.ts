import { inTransaction, type Queryable } from "@/db/client";
import { updateImportRun } from "@/db/queries/import-runs";
import { listPoints, renamePoint } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { saveProfiles } from "../mapping-profiles/save";
import { parseInput } from "../parse";
import { type Caution, cautionsOf, markOf } from "./cautions";
import { type MappingTask, readMappingTask } from "./mapping";
import { fileFaults, type Present, pointFaults } from "./mapping-faults";
import { inspectionOf } from "./mapping-lines";
import { type MappingInput, mappingInput, type PointChoice, type RunAnswers } from "./run-input";

/**
 * Settles what the points of the waiting files, or of the given runs, are, and keeps profiles where they are wished.
 * Everything that is missing or cannot be is reported together, by point; then what is odd, to be let pass by its
 * mark. Nothing is kept until all is settled. Returns the runs that can be imported now.
 */
export function confirmMapping(
  ctx: Context,
  buildingId: number,
  input: MappingInput,
  runIds?: readonly number[],
): number[] {
  const task = readMappingTask(ctx, buildingId, runIds);
  return confirmTask(ctx, buildingId, task, input);
}

/** The same for a task that was read just now, with nothing else done since. */
export function confirmTask(ctx: Context, buildingId: number, task: MappingTask, input: MappingInput): number[] {
  requireFacilities(ctx);
  const { points, answersByRun, cautionsSeen, profiles } = parseInput(mappingInput, input);
  const present = presentIn(ctx, buildingId);
  const fieldErrors: Record<string, string> = Object.fromEntries(fileFaults(task.fileAsks, answersByRun));
  for (const [name, fault] of pointFaults(task.lines, points, present)) fieldErrors[`points.${name}`] = fault;
  refuseOpen(fieldErrors);
  const cautions = mappingCautions(ctx.db, buildingId, task, points);
  if (markOf(cautions) !== cautionsSeen && cautions.length > 0) refuseUnseen(cautions);

  inTransaction(ctx.db, (tx) => {
    for (const [name, choice] of Object.entries(points)) {
      if (!choice.skip && choice.continues) renamePoint(tx, buildingId, choice.continues, name);
    }
    for (const run of task.waiting) {
      const names = inspectionOf(run).points.map((point) => point.name);
      const answers: RunAnswers = {
        file: answersByRun[String(run.id)] ?? {},
        points: Object.fromEntries(names.map((name) => [name, points[name] as PointChoice])),
      };
      updateImportRun(tx, run.id, { answers });
    }
    saveProfiles(ctx, tx, buildingId, { runs: task.waiting, wishes: profiles, points, answersByRun, cautions });
  });
  return task.waiting.map((run) => run.id);
}

/** What is odd about a mapping as it is to be. */
export function mappingCautions(
  db: Queryable,
  buildingId: number,
  { lines }: Pick<MappingTask, "lines">,
  points: Readonly<Record<string, PointChoice>>,
): Caution[] {
  return cautionsOf(lines, points, new Map(listZones(db, buildingId).map((zone) => [zone.id, zone.code])));
}

function refuseOpen(fieldErrors: Record<string, string>): void {
  const count = Object.keys(fieldErrors).length;
  if (count === 0) return;
  const words = count === 1 ? "One question is" : `${count} questions are`;
  throw new ServiceError("invalid", `${words} still open.`, fieldErrors);
}

function refuseUnseen(cautions: readonly Caution[]): never {
  const words = cautions.length === 1 ? "One thing is odd" : `${cautions.length} things are odd`;
  throw new ServiceError("invalid", `${words}. Look at it, and say that it is right or change it.`, {
    cautions: cautions.map((each) => each.sentence).join(" "),
  });
}

/** What the checks of a mapping are made against. */
export function presentIn(ctx: Pick<Context, "db">, buildingId: number): Present {
  return {
    zoneIds: new Set(listZones(ctx.db, buildingId).map((zone) => zone.id)),
    points: listPoints(ctx.db, buildingId),
  };
}
