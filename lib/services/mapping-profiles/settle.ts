import { inTransaction, type Queryable } from "@/db/client";
import { type ImportRunRow, updateImportRun } from "@/db/queries/import-runs";
import { listNewestVersions, type NamedVersion, saveRunProfile } from "@/db/queries/mapping-profiles";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import type { Context } from "../context";
import { type Caution, cautionsOf } from "../trend-imports/cautions";
import { pointFaults } from "../trend-imports/mapping-faults";
import { type LineBasis, linesOf, type MappingLine, readLineBasis } from "../trend-imports/mapping-lines";
import type { PointChoice, RunAnswers } from "../trend-imports/run-input";
import { chooseProfile } from "./choose-profile";
import { contentOf, type ProfileContent } from "./profile-content";
import type { Difference } from "./profile-fit";

/** A profile of the building as it is read once for many files. */
export type KnownProfile = { version: NamedVersion; content: ProfileContent };

/**
 * What the profiles make of a file. `fits`: every question is answered, the run needs nobody. `differs`: the nearest
 * profile answers all but what is new, missing or changed. `none`: no profile is of this source.
 */
export type Settlement =
  | { status: "none" }
  | {
      status: "fits" | "differs";
      profile: { versionId: number; name: string; version: number };
      content: ProfileContent;
      differences: Difference[];
      answers: RunAnswers;
      /** Which profile was applied and what no longer fits, for people. */
      sentence: string;
    };

/** Profiles in use, newest first. */
export const readProfiles = (db: Queryable, buildingId: number): KnownProfile[] =>
  listNewestVersions(db, buildingId).map((version) => ({ version, content: contentOf(version.content) }));

/**
 * Settles an inspected run by the building's profiles. When one fits, the run is given its answers and keeps which
 * version gave them; the caller queues it. Otherwise nothing is written.
 */
export function settleByProfile(
  ctx: Pick<Context, "db">,
  run: Pick<ImportRunRow, "id" | "buildingId">,
  inspection: TrendInspection,
): Settlement {
  const profiles = readProfiles(ctx.db, run.buildingId);
  if (profiles.length === 0) return { status: "none" };
  const basis = readLineBasis(ctx.db, run.buildingId, [inspection]);
  const settlement = settlementOf(profiles, basis, { id: run.id, inspection });
  if (settlement.status === "fits")
    inTransaction(ctx.db, (tx) => {
      updateImportRun(tx, run.id, { answers: settlement.answers });
      saveRunProfile(tx, {
        runId: run.id,
        profileVersionId: settlement.profile.versionId,
        role: "settled-by",
        remark: settlement.sentence,
      });
    });
  return settlement;
}

/** What the profiles make of one file; writes nothing. */
export function settlementOf(
  profiles: readonly KnownProfile[],
  basis: LineBasis,
  run: { id: number; inspection: TrendInspection },
): Settlement {
  const chosen = chooseProfile(profiles, run.inspection);
  if (!chosen) return { status: "none" };
  const { version, content, others } = chosen;
  const lines = linesOf(basis, [run]);
  const points: Record<string, PointChoice> = Object.fromEntries(
    lines.flatMap(({ name }) => (content.points[name] ? [[name, content.points[name].choice]] : [])),
  );
  const named = new Set(chosen.differences.map((each) => each.point));
  const placed = placeDifferences(lines, points, content, basis).filter(({ point }) => !named.has(point));
  const differences = [...chosen.differences, ...placed];
  const profile = { versionId: version.id, name: version.name, version: version.version };
  const answers: RunAnswers = { file: chosen.answers, points };
  const status = differences.length === 0 ? "fits" : "differs";
  return { status, profile, content, differences, answers, sentence: sentenceOf(profile, differences, others) };
}

/** Where the profile no longer fits the building: zones gone, places taken, points mapped otherwise since, odd values. */
function placeDifferences(
  lines: readonly MappingLine[],
  points: Readonly<Record<string, PointChoice>>,
  content: ProfileContent,
  { zones, points: present }: LineBasis,
): Difference[] {
  const known = lines.filter((line) => points[line.name]);
  const faults = pointFaults(known, points, { zoneIds: new Set(zones.map((zone) => zone.id)), points: present });
  const found: Difference[] = [...faults].map(([point, sentence]) => ({ what: "changed", point, sentence }));
  for (const { name, known: mapping } of known) {
    const choice = points[name] as PointChoice;
    const same = !choice.skip && mapping?.kind === choice.kind && mapping.zoneId === choice.zoneId;
    if (mapping && !choice.skip && !same && !faults.has(name))
      found.push({ what: "changed", point: name, sentence: `${name} was mapped otherwise since.` });
  }
  const cautions = cautionsOf(known, points, new Map(zones.map((zone) => [zone.id, zone.code])));
  return [...found, ...cautions.filter(({ key }) => !content.acceptedCautions.includes(key)).map(asDifference)];
}

const asDifference = ({ point, sentence }: Caution): Difference => ({ what: "changed", point, sentence });

/** Differences that a sentence names; the rest are counted. */
const NAMED = 5;

function sentenceOf(
  { name, version }: { name: string; version: number },
  differences: readonly Difference[],
  others: readonly string[],
): string {
  const title = `Profile "${name}", version ${version}`;
  if (differences.length === 0) {
    const more =
      others.length === 0
        ? ""
        : ` It is the newest of those that fit; so ${others.length === 1 ? "does" : "do"} ${others.map((other) => `"${other}"`).join(", ")}.`;
    return `${title}, answered every question.${more}`;
  }
  const count = (what: Difference["what"]) => differences.filter((each) => each.what === what).length;
  const counts = (["new", "missing", "changed"] as const).flatMap((what) =>
    count(what) > 0 ? `${count(what)} ${what}` : [],
  );
  const shown = differences.slice(0, NAMED).map((each) => each.sentence);
  const rest = differences.length - shown.length;
  return `${title}, was applied, but does not fit any more (${counts.join(", ")}). ${shown.join(" ")}${rest > 0 ? ` And ${rest} more.` : ""}`;
}
