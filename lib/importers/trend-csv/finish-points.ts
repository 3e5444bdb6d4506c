import type { CellReader } from "./cell-reader";
import { makeFinding } from "./findings";
import { formatUtc } from "./format-utc";
import { findGaps, type Gap, rhythmOf, sortedInstants } from "./gaps";
import { LineList } from "./line-list";
import { orderReadings } from "./order-and-duplicates";
import { joinInstants, joinReadings, POINT_NOTICES, type PointDraft } from "./point-draft";
import { KEPT, REPLACED, type RowFates, SAME_AS_EARLIER } from "./row-fates";
import type { Rows } from "./rows";
import type { TrendFinding, TrendPoint } from "./trend-file";

/** Longest gaps that are named one by one; the rest are summed up. */
const GAPS_NAMED = 20;

/** Puts each point's readings in order, tells interval data from change-of-value data, and reports what it saw. */
export function finishPoints(
  drafts: readonly PointDraft[],
  context: { rows: Rows; fates: RowFates; reader: CellReader },
): { points: TrendPoint[]; findings: TrendFinding[]; sorted: boolean } {
  const { rows, fates, reader } = context;
  const findings: TrendFinding[] = [];
  const identical = new Set<number>();
  const conflicting = new Map<number, number>();
  const instants = instantsByPoint(drafts);
  let sorted = false;

  const points = drafts.map((draft, k): TrendPoint => {
    const ordered = orderReadings(joinReadings(draft.chunks));
    sorted ||= ordered.reordered;
    for (const row of ordered.identical) identical.add(row);
    for (const { replaced, keptRow } of ordered.conflicting) conflicting.set(replaced, keptRow);
    for (const row of ordered.rows) fates.mark(row, KEPT);
    const rhythm = draft.sparse
      ? ({ sampling: "change-of-value", stepSeconds: null } as const)
      : rhythmOf(instants[k] as Float64Array);
    draft.sampling = rhythm.sampling;
    draft.stepSeconds = rhythm.stepSeconds;
    findings.push(...pointFindings(draft, ordered.ts.length));
    const states = draft.kind === "state" ? compressStates(ordered.values, reader.words) : null;
    return {
      name: draft.name,
      kind: draft.kind,
      unitAsWritten: draft.unitAsWritten,
      unit: draft.unit,
      sampling: draft.sampling,
      tsUtcSeconds: ordered.ts,
      values: states ? states.values : ordered.values,
      ...(states ? { stateNames: states.names } : {}),
      missing: draft.lists["value-missing"].count,
      ...(draft.intervalSeconds === null ? {} : { intervalSeconds: draft.intervalSeconds }),
    };
  });

  const same = new LineList();
  for (const row of [...identical].sort((a, b) => a - b)) {
    if (conflicting.has(row)) continue;
    fates.mark(row, SAME_AS_EARLIER, "duplicate-identical");
    same.add(rows.lines[row] as number);
  }
  if (same.count > 0) findings.push(makeFinding("duplicate-identical", { count: same.count, lines: same.sorted() }));
  if (conflicting.size > 0) {
    const lines: number[] = [];
    for (const [replaced, keptRow] of [...conflicting].sort((a, b) => a[0] - b[0])) {
      fates.mark(replaced, REPLACED, "duplicate-conflicting");
      if (lines.length < 100) lines.push(rows.lines[replaced] as number, rows.lines[keptRow] as number);
    }
    findings.push(makeFinding("duplicate-conflicting", { count: conflicting.size, lines }));
  }
  findings.push(...rhythmFindings(drafts), ...gapFindings(drafts, instants));
  return { points, findings, sorted };
}

/** Instants of each point's rows, sorted once where points share them. */
function instantsByPoint(drafts: readonly PointDraft[]): Float64Array[] {
  const known = new Map<Float64Array, Float64Array>();
  return drafts.map((draft) => {
    const only = draft.presence.length === 1 ? (draft.presence[0] as Float64Array) : joinInstants(draft.presence);
    let instants = known.get(only);
    if (!instants) {
      instants = sortedInstants(only);
      known.set(only, instants);
    }
    return instants;
  });
}

function pointFindings(draft: PointDraft, readings: number): TrendFinding[] {
  const findings: TrendFinding[] = [];
  for (const notice of POINT_NOTICES) {
    const list = draft.lists[notice];
    if (list.count === 0) continue;
    const odd = notice === "sentinel-value" || notice === "implausible-value" ? [...draft.oddValues[notice]] : [];
    const evidence = odd.length > 5 ? `${odd.slice(0, 5).join(", ")} and others` : odd.join(", ");
    const facts = { count: list.count, point: draft.name, lines: list.sorted() };
    findings.push(makeFinding(notice, evidence === "" ? facts : { ...facts, evidence }));
  }
  if (readings === 0) findings.push(makeFinding("no-readings", { point: draft.name }));
  return findings;
}

function rhythmFindings(drafts: readonly PointDraft[]): TrendFinding[] {
  const names = drafts.filter((d) => d.sampling === "change-of-value").map((d) => d.name);
  if (names.length === 0) return [];
  return [makeFinding("change-of-value", names.length === 1 ? { point: names[0] as string } : { points: names })];
}

/** Gaps, each once for all points that share it. */
function gapFindings(drafts: readonly PointDraft[], instants: readonly Float64Array[]): TrendFinding[] {
  const found = new Map<string, { gap: Gap; points: string[] }>();
  const cache = new Map<Float64Array, Gap[]>();
  drafts.forEach((draft, k) => {
    if (draft.sampling !== "interval" || draft.stepSeconds === null) return;
    const own = instants[k] as Float64Array;
    let gaps = cache.get(own);
    if (!gaps) {
      gaps = findGaps(own, draft.stepSeconds);
      cache.set(own, gaps);
    }
    for (const gap of gaps) {
      const key = `${gap.fromTs} ${gap.toTs}`;
      const known = found.get(key);
      if (known) known.points.push(draft.name);
      else found.set(key, { gap, points: [draft.name] });
    }
  });
  const where = (points: readonly string[]): Pick<TrendFinding, "point" | "points"> =>
    points.length === 1
      ? { point: points[0] as string }
      : points.length === drafts.length
        ? {}
        : { points: [...points] };
  const all = [...found.values()];
  const longest = new Set(
    [...all].sort((a, b) => b.gap.toTs - b.gap.fromTs - (a.gap.toTs - a.gap.fromTs)).slice(0, GAPS_NAMED),
  );
  const findings = all
    .filter((entry) => longest.has(entry))
    .sort((a, b) => a.gap.fromTs - b.gap.fromTs)
    .map(({ gap, points }) =>
      makeFinding("gap", {
        ...where(points),
        fromUtc: formatUtc(gap.fromTs),
        toUtc: formatUtc(gap.toTs),
        missing: gap.missing,
      }),
    );
  const rest = all.filter((entry) => !longest.has(entry));
  if (rest.length > 0) {
    findings.push(
      makeFinding("gap", { count: rest.length, missing: rest.reduce((sum, { gap }) => sum + gap.missing, 0) }),
    );
  }
  return findings;
}

/** State numbers of one point, counted from 0 in the order of the names. */
function compressStates(values: Float64Array, words: readonly string[]): { values: Float64Array; names: string[] } {
  const used = [...new Set(values)].map((id) => ({ id, name: words[id] as string }));
  used.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const place = new Map(used.map(({ id }, i) => [id, i]));
  return { values: values.map((id) => place.get(id) as number), names: used.map(({ name }) => name) };
}
