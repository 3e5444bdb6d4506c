import { updateImportRun } from "@/db/queries/import-runs";
import { listZones } from "@/db/queries/zones";
import { BUILDING_KINDS } from "@/lib/trends/point-kind";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { inspectionOf, readMappingTask } from "./mapping";
import { type FileAnswers, type MappingInput, mappingInput, type PointChoice } from "./run-input";

/** What an import was told: kept with its run. */
export type RunAnswers = { file: FileAnswers; points: Record<string, PointChoice> };

/**
 * Settles what the waiting files' points are. Everything that is missing or cannot be is reported together, by
 * point; nothing is kept until all is settled.
 */
export function confirmMapping(ctx: Context, buildingId: number, input: MappingInput): number[] {
  requireFacilities(ctx);
  const task = readMappingTask(ctx, buildingId);
  const { points, answersByRun } = parseInput(mappingInput, input);
  const zoneIds = new Set(listZones(ctx.db, buildingId).map((zone) => zone.id));
  const fieldErrors: Record<string, string> = {};
  const taken = new Map<string, string>();
  for (const line of task.lines) {
    const choice = points[line.name];
    const field = `points.${line.name}`;
    if (!choice) {
      fieldErrors[field] = `${line.name}: say what it is, or leave it out.`;
      continue;
    }
    if (choice.skip) continue;
    if (choice.zoneId !== null && !zoneIds.has(choice.zoneId))
      fieldErrors[field] = `${line.name}: this zone does not exist in the building. Add it first, or choose another.`;
    else if (choice.zoneId === null && !BUILDING_KINDS.includes(choice.kind))
      fieldErrors[field] = `${line.name}: choose the zone it belongs to, or leave it out.`;
    else if (line.unitAsk && !choice.unit)
      fieldErrors[field] = `${line.name}: the file does not say its unit. Choose one.`;
    const place = `${choice.kind}/${choice.zoneId}`;
    const other = taken.get(place);
    if (other && choice.zoneId !== null)
      fieldErrors[field] ??=
        `${line.name}: ${other} is already the ${choice.kind.replaceAll("-", " ")} of that zone. Leave one of them out.`;
    else taken.set(place, line.name);
  }
  for (const { runId, fileName, ask } of task.fileAsks) {
    const answers = answersByRun[String(runId)] ?? {};
    const answer = {
      "date-order": answers.dateOrder,
      clock: answers.clock,
      "value-column": answers.valueColumn,
      "flag-column": answers.flagColumn,
      unit: "",
    }[ask.what];
    if (answer === undefined || answer === "")
      fieldErrors[`answers.${runId}.${ask.what}`] = `${fileName}: ${ask.question}`;
  }
  const count = Object.keys(fieldErrors).length;
  if (count > 0)
    throw new ServiceError(
      "invalid",
      `${count} ${count === 1 ? "question is" : "questions are"} still open.`,
      fieldErrors,
    );
  for (const run of task.waiting) {
    const names = inspectionOf(run).points.map((point) => point.name);
    const answers: RunAnswers = {
      file: answersByRun[String(run.id)] ?? {},
      points: Object.fromEntries(names.map((name) => [name, points[name] as PointChoice])),
    };
    updateImportRun(ctx.db, run.id, { answers });
  }
  return task.waiting.map((run) => run.id);
}

/** The choices that need no person: points mapped before, and proposals of high confidence that name their place. */
export function proposedChoices(ctx: Context, buildingId: number): Record<string, PointChoice> {
  const choices: Record<string, PointChoice> = {};
  for (const { name, known, proposal, unitAsk } of readMappingTask(ctx, buildingId).lines) {
    const unit = unitAsk?.proposal ?? null;
    if (known) choices[name] = { skip: false, kind: known.kind, zoneId: known.zoneId, unit };
    else if (proposal.skip) choices[name] = { skip: true };
    else if (proposal.kind && (proposal.zoneId !== null || BUILDING_KINDS.includes(proposal.kind)))
      choices[name] = { skip: false, kind: proposal.kind, zoneId: proposal.zoneId, unit };
  }
  return choices;
}
