import type { Queryable } from "@/db/client";
import type { ImportRunRow } from "@/db/queries/import-runs";
import {
  findProfileByName,
  insertProfile,
  insertProfileVersion,
  listVersions,
  saveRunProfile,
} from "@/db/queries/mapping-profiles";
import { actorName } from "../authorise";
import type { Context } from "../context";
import type { Caution } from "../trend-imports/cautions";
import { inspectionOf } from "../trend-imports/mapping-lines";
import type { FileAnswers, PointChoice, ProfileWish } from "../trend-imports/run-input";
import { isOnePoint, shapeOf, sourceKey } from "./file-shape";
import { contentOf, type ProfileContent, type ProfilePoint } from "./profile-content";

/** A mapping that was just confirmed. */
export type ConfirmedMapping = {
  runs: readonly ImportRunRow[];
  wishes: readonly ProfileWish[];
  points: Readonly<Record<string, PointChoice>>;
  answersByRun: Readonly<Record<string, FileAnswers>>;
  /** Those that were let pass. */
  cautions: readonly Caution[];
};

/**
 * Keeps the confirmed mapping of each source that has a name wished for it: a new profile, or a new version of the one
 * in use of that name. A version that would say the same as the newest is not made again.
 */
export function saveProfiles(
  ctx: Pick<Context, "actor" | "now">,
  tx: Queryable,
  buildingId: number,
  mapping: ConfirmedMapping,
): void {
  const bySource = new Map<string, ImportRunRow[]>();
  for (const run of mapping.runs) {
    const key = sourceKey(inspectionOf(run));
    bySource.set(key, [...(bySource.get(key) ?? []), run]);
  }
  for (const { key, name: wished } of mapping.wishes) {
    const name = wished.trim();
    const runs = bySource.get(key);
    if (name === "" || !runs) continue;
    const profile = findProfileByName(tx, buildingId, name) ?? insertProfile(tx, { buildingId, name });
    const [newest] = listVersions(tx, profile.id);
    const before = newest ? contentOf(newest.content) : null;
    const content = profileFrom(runs, mapping, before);
    const same = newest && before && JSON.stringify(before) === JSON.stringify(contentOf(content));
    const version = same
      ? newest
      : insertProfileVersion(tx, {
          profileId: profile.id,
          version: (newest?.version ?? 0) + 1,
          content,
          fileName: runs.at(-1)?.fileName ?? "",
          madeAtMs: ctx.now,
          madeBy: actorName(ctx.actor),
        });
    for (const run of runs) saveRunProfile(tx, { runId: run.id, profileVersionId: version.id, role: "source-of" });
  }
}

/** What the files of one source say, with what was decided of them. Files of one point each add to what was kept before. */
function profileFrom(
  runs: readonly ImportRunRow[],
  { points, answersByRun, cautions }: ConfirmedMapping,
  before: ProfileContent | null,
): ProfileContent {
  const inspections = runs.map(inspectionOf);
  const newest = inspections.at(-1) as (typeof inspections)[number];
  const shape = shapeOf(newest);
  const kept: Record<string, ProfilePoint> = isOnePoint(shape.layout) ? { ...before?.points } : {};
  for (const { name, unitAsWritten, kind } of inspections.flatMap((inspection) => inspection.points)) {
    const choice = points[name];
    if (choice) kept[name] = { unitAsWritten, holds: kind, choice: withoutFormerName(choice) };
  }
  const answers = agreedAnswers(runs.map((run) => answersByRun[String(run.id)] ?? {}));
  const seen = inspections.flatMap(({ ask }) =>
    ask.filter(({ what }) => what === "flag-column").flatMap((a) => a.choices),
  );
  const dateFormat =
    shape.dateFormat ?? inspections.find((each) => each.detected.dateOrder)?.detected.dateOrder ?? null;
  return {
    shape: { ...shape, dateFormat },
    answers: { ...answers, flagColumn: answers.flagColumn && { good: answers.flagColumn.good, seen } },
    points: kept,
    acceptedCautions: cautions.filter(({ point }) => kept[point]).map(({ key }) => key),
  };
}

function withoutFormerName(choice: PointChoice): ProfilePoint["choice"] {
  if (choice.skip) return choice;
  const { kind, zoneId, unit = null } = choice;
  return { skip: false, kind, zoneId, unit };
}

/** Answers that all files of a source were given alike; what they part in says nothing about the next. */
function agreedAnswers(all: readonly FileAnswers[]): FileAnswers {
  const agreed = <K extends keyof FileAnswers>(key: K): Pick<FileAnswers, K> | Record<string, never> => {
    const given = all.map((answers) => answers[key]).filter((answer) => answer !== undefined);
    const alike = new Set(given.map((answer) => JSON.stringify(answer))).size === 1;
    return alike ? ({ [key]: given[0] } as Pick<FileAnswers, K>) : {};
  };
  return { ...agreed("dateOrder"), ...agreed("clock"), ...agreed("valueColumn"), ...agreed("flagColumn") };
}
