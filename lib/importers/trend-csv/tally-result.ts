import { describeFile, type Opening } from "./describe-file";
import type { FileTally } from "./file-tally";
import type { Rhythm } from "./gaps";
import { judgeFile } from "./judge-file";
import type { PointTally } from "./point-tally";
import { noReadings } from "./refusals";
import { summarisePoint } from "./summarise-point";
import type { TrendAnswers, TrendDetected, TrendFileResult, TrendFinding } from "./trend-file";

/** What a file held, once all of its parts have been read. */
export function tallyResult(
  tally: FileTally,
  about: {
    file: string;
    answers: TrendAnswers;
    locale?: string;
    detected: TrendDetected;
    converted: readonly TrendFinding[];
  },
): TrendFileResult {
  const { file, answers, locale, detected, converted } = about;
  const rhythms = rhythmsOf(tally.points);
  const verdict = judgeFile({ tally, rhythms, answers, locale });
  const findings = [...converted, ...verdict.findings];
  const heldBack = tally.lists.ambiguous.count + tally.lists.nonexistent.count;
  const refusal = tally.readings + heldBack > 0 ? null : noReadings(tally.points.length, whyNone(verdict.findings));
  const caution = findings.some((finding) => finding.severity !== "note");
  return {
    file,
    outcome: refusal ? "refuse" : verdict.asks.length > 0 ? "ask" : caution ? "accept-with-findings" : "accept",
    detected: {
      ...detected,
      decimal: tally.decimal,
      ...describeFile(tally.opening as Opening, tally.tables, rhythms.values()),
    },
    points: tally.points.map((point) => summarisePoint(point, rhythms.get(point) as Rhythm, verdict.instantsKnown)),
    instantsKnown: verdict.instantsKnown,
    ask: refusal ? [] : verdict.asks,
    findings,
    refusal,
    rows: tally.rows,
    rowNotes: tally.notes.notes,
  };
}

function rhythmsOf(points: readonly PointTally[]): Map<PointTally, Rhythm> {
  const shared = new Map<PointTally["instants"], Rhythm>();
  return new Map(
    points.map((point) => {
      if (point.draft.sparse) return [point, { sampling: "change-of-value", stepSeconds: null }] as const;
      const rhythm = shared.get(point.instants) ??
        point.instants?.rhythm() ?? { sampling: "interval" as const, stepSeconds: null };
      shared.set(point.instants, rhythm);
      return [point, rhythm] as const;
    }),
  );
}

function whyNone(findings: readonly TrendFinding[]): string {
  const lost = findings.filter((finding) => finding.count !== undefined && finding.severity !== "note");
  return lost.length === 0
    ? "There is a heading and nothing to read under it."
    : lost
        .map((finding) => finding.sentence)
        .slice(0, 3)
        .join(" ");
}
