import { inTransaction } from "@/db/client";
import { updateImportRun } from "@/db/queries/import-runs";
import { listPoints } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { inspectionOf, readMappingTask } from "./mapping";
import { fileFaults, type Present, pointFaults } from "./mapping-faults";
import { type MappingInput, mappingInput, type PointChoice, type RunAnswers } from "./run-input";

/**
 * Settles what the points of the waiting files, or of the given runs, are. Everything that is missing or cannot be is
 * reported together, by point; nothing is kept until all is settled. Returns the runs that can be imported now.
 */
export function confirmMapping(
  ctx: Context,
  buildingId: number,
  input: MappingInput,
  runIds?: readonly number[],
): number[] {
  requireFacilities(ctx);
  const task = readMappingTask(ctx, buildingId, runIds);
  const { points, answersByRun } = parseInput(mappingInput, input);
  const fieldErrors: Record<string, string> = Object.fromEntries(fileFaults(task.fileAsks, answersByRun));
  for (const [name, fault] of pointFaults(task.lines, points, presentIn(ctx, buildingId)))
    fieldErrors[`points.${name}`] = fault;
  const count = Object.keys(fieldErrors).length;
  if (count > 0)
    throw new ServiceError(
      "invalid",
      `${count} ${count === 1 ? "question is" : "questions are"} still open.`,
      fieldErrors,
    );
  inTransaction(ctx.db, (tx) => {
    for (const run of task.waiting) {
      const names = inspectionOf(run).points.map((point) => point.name);
      const answers: RunAnswers = {
        file: answersByRun[String(run.id)] ?? {},
        points: Object.fromEntries(names.map((name) => [name, points[name] as PointChoice])),
      };
      updateImportRun(tx, run.id, { answers });
    }
  });
  return task.waiting.map((run) => run.id);
}

/** What the checks of a mapping are made against. */
export function presentIn(ctx: Context, buildingId: number): Present {
  return {
    zoneIds: new Set(listZones(ctx.db, buildingId).map((zone) => zone.id)),
    points: listPoints(ctx.db, buildingId),
  };
}
