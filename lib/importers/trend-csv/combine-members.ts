import { makeFinding } from "./findings";
import { noReadings } from "./refusals";
import { refusedResult } from "./refused-result";
import { addAccounts } from "./row-fates";
import { NO_ROWS, type TrendAsk, type TrendFileResult, type TrendFinding } from "./trend-file";

/** Findings that are counted over all members rather than listed for each. */
const SUMMED: readonly string[] = ["name-from-file", "unit-unknown", "unit-from-values"];

/** Readings of the members of a zip as one. A member that cannot be taken in is reported and does not hold up the others. */
export function combineMembers(file: string, members: readonly TrendFileResult[]): TrendFileResult {
  const taken = members.filter((member) => !member.refusal);
  const findings: TrendFinding[] = [];
  for (const { file: name, refusal } of members) {
    if (refusal?.code === "no-readings") findings.push(makeFinding("no-readings", { file: name }));
    else if (refusal) findings.push(makeFinding("file-refused", { file: name, evidence: refusal.sentence }));
  }
  const { points, repeated } = pointsApart(taken);
  if (taken.length === 0) {
    const empty = members.every((member) => member.refusal?.code === "no-readings");
    const refusal = empty
      ? noReadings(members.length, "No file of the zip holds a reading.")
      : {
          code: "no-files-in-zip" as const,
          sentence:
            `None of the ${members.length} files in the zip could be read. ${members[0]?.refusal?.sentence ?? ""}`.trim(),
        };
    return refusedResult(file, refusal, { layout: "zip" }, findings);
  }
  for (const code of SUMMED) {
    const found = taken.flatMap((member) => member.findings.filter((finding) => finding.code === code));
    if (found.length === 0) continue;
    const count = found.reduce((sum, finding) => sum + (finding.count ?? finding.points?.length ?? 1), 0);
    findings.push(makeFinding((found[0] as TrendFinding).code, { count }));
  }
  if (repeated > 0) findings.push(makeFinding("repeated-name", { count: repeated }));
  for (const member of taken) {
    for (const finding of member.findings)
      if (!SUMMED.includes(finding.code)) findings.push({ ...finding, file: member.file });
  }
  const asks = combineAsks(taken);
  const caution = findings.some((finding) => finding.severity !== "note");
  return {
    file,
    outcome: asks.length > 0 ? "ask" : caution ? "accept-with-findings" : "accept",
    detected: { ...(taken[0] as TrendFileResult).detected, layout: "zip" },
    points,
    instantsKnown: taken.every((member) => member.instantsKnown),
    ask: asks,
    findings,
    refusal: null,
    rows: members.reduce((sum, member) => addAccounts(sum, member.rows), { ...NO_ROWS }),
    rowNotes: members.flatMap((member) => member.rowNotes.map((note) => ({ ...note, file: member.file }))),
  };
}

/** Points of one name in several members take the folder and file before it: two zones are never taken for one. */
function pointsApart(members: readonly TrendFileResult[]): Pick<TrendFileResult, "points"> & { repeated: number } {
  const repeated = repeatedAmong(members);
  const points = members.flatMap((member) =>
    member.points.map((point) => ({ ...point, name: nameInZip(point.name, member.file, repeated) })),
  );
  return { points, repeated: repeated.size };
}

/** Names that stand in more than one member. */
export function repeatedAmong(members: readonly TrendFileResult[]): Set<string> {
  const counts = new Map<string, number>();
  for (const { points } of members.filter((member) => !member.refusal))
    for (const { name } of points) counts.set(name, (counts.get(name) ?? 0) + 1);
  return new Set([...counts].filter(([, count]) => count > 1).map(([name]) => name));
}

export const nameInZip = (name: string, member: string, repeated: ReadonlySet<string>): string =>
  repeated.has(name) ? `${name} (${member})` : name;

/** The same question of several members is asked once. */
function combineAsks(members: readonly TrendFileResult[]): TrendAsk[] {
  const asks = new Map<string, TrendAsk>();
  for (const ask of members.flatMap((member) => member.ask)) {
    const key = `${ask.what} ${ask.choices.join()} ${ask.column ?? ""}`;
    const known = asks.get(key);
    if (!known) asks.set(key, ask);
    else {
      const proposal = known.proposal === ask.proposal ? known.proposal : undefined;
      const points = known.points || ask.points ? [...(known.points ?? []), ...(ask.points ?? [])] : undefined;
      asks.set(key, { ...known, proposal, points });
    }
  }
  return [...asks.values()];
}
