import { clockAsk, dateOrderAsk, flagAsk, timeStartAsk, unitAsks, valueColumnAsk } from "./asks";
import type { FileTally } from "./file-tally";
import { makeFinding } from "./findings";
import { gapFindings } from "./gap-findings";
import type { Rhythm } from "./gaps";
import type { LineList } from "./line-list";
import { POINT_NOTICES } from "./point-draft";
import type { PointTally } from "./point-tally";
import type { TrendAnswers, TrendAsk, TrendFinding, TrendFindingCode } from "./trend-file";

export type FileEvidence = {
  tally: FileTally;
  rhythms: ReadonlyMap<PointTally, Rhythm>;
  answers: TrendAnswers;
  locale?: string;
};

/** What is reported about a whole file, and what has to be asked before it can be stored. */
export function judgeFile(evidence: FileEvidence): {
  findings: TrendFinding[];
  asks: TrendAsk[];
  instantsKnown: boolean;
} {
  const { tally, answers } = evidence;
  const { order, lists } = tally;
  const isOrderKnown = order.status !== "unknown" || answers.dateOrder !== undefined;
  const isStartKnown = !tally.countsSeconds || answers.timeStart !== undefined;
  const instantsKnown = isOrderKnown && isStartKnown;
  const findings: TrendFinding[] = [];
  const asks: TrendAsk[] = [];
  const preamble = tally.opening?.preambleLines ?? 0;
  if (preamble > 0) findings.push(makeFinding("preamble-skipped", { lines: preamble }));
  if (order.status === "known") findings.push(makeFinding("date-order-inferred", { evidence: order.evidence }));
  if (!isOrderKnown) {
    findings.push(makeFinding("date-order-unknown"));
    asks.push(dateOrderAsk(evidence.locale));
  }
  if (!isStartKnown) {
    findings.push(makeFinding("time-start-unknown"));
    asks.push(timeStartAsk());
  }
  if (tally.statistics) {
    findings.push(makeFinding("interval-statistics"));
    if (!tally.statistics.columns.has(answers.valueColumn ?? "")) asks.push(valueColumnAsk(tally.statistics));
  }
  if (tally.numericFlag && !answers.flagColumn) asks.push(flagAsk(tally.numericFlag));
  if (instantsKnown) {
    findings.push(
      ...listed("repeated-hour-resolved", lists.repeated),
      ...listed("ambiguous-local-time", lists.ambiguous),
      ...listed("nonexistent-local-time", lists.nonexistent),
      ...(tally.sorted ? [makeFinding("rows-sorted")] : []),
    );
    if (lists.nonexistent.count > 0 && !answers.clock) asks.push(clockAsk());
  }
  findings.push(...ofNames(tally));
  const units = unitAsks(tally.points, answers);
  if (units.unknown > 0) findings.push(makeFinding("unit-unknown", { count: units.unknown }));
  asks.push(...units.asks);
  findings.push(...ofRows(tally), ...tally.points.flatMap(ofPoint));
  // What speaks of instants stands for nothing while the order of day and month, or the start of the count, is unknown.
  if (instantsKnown) findings.push(...ofInstants(evidence));
  return { findings, asks, instantsKnown };
}

const listed = (code: TrendFindingCode, list: LineList): TrendFinding[] =>
  list.count > 0 ? [makeFinding(code, { count: list.count, lines: list.sorted() })] : [];

function ofNames({ points, repeatedNames }: FileTally): TrendFinding[] {
  const findings: TrendFinding[] = [];
  const fromFile = points.filter(({ draft }) => draft.nameFromFile).length;
  if (fromFile > 0) findings.push(makeFinding("name-from-file", { count: fromFile }));
  const fromValues = points.filter(({ draft }) => draft.unitFromValues).map(({ name }) => name);
  if (fromValues.length > 0) findings.push(makeFinding("unit-from-values", pointOrPoints(fromValues)));
  const repeated = [...repeatedNames];
  if (repeated.length > 0) findings.push(makeFinding("repeated-name", { count: repeated.length, points: repeated }));
  return findings;
}

const pointOrPoints = (names: string[]): Pick<TrendFinding, "point" | "points"> =>
  names.length === 1 ? { point: names[0] as string } : { points: names };

function ofRows({ lists, isCutOff }: FileTally): TrendFinding[] {
  const findings = listed("event-row", lists.event);
  if (lists.trailing.count > 0) findings.push(makeFinding("trailing-rows-ignored", { lines: lists.trailing.count }));
  if (lists.unreadable.count > 0) {
    const evidence = "The last line breaks off, so the file may be incomplete: download it again.";
    const facts = { count: lists.unreadable.count, lines: lists.unreadable.sorted() };
    findings.push(makeFinding("row-unreadable", isCutOff ? { ...facts, evidence } : facts));
  }
  return findings;
}

function ofPoint({ name, lists, oddValues, readings }: PointTally): TrendFinding[] {
  const findings: TrendFinding[] = [];
  for (const notice of POINT_NOTICES) {
    const list = lists[notice];
    if (list.count === 0) continue;
    const odd = notice === "sentinel-value" || notice === "implausible-value" ? [...oddValues[notice]] : [];
    const evidence = odd.length > 5 ? `${odd.slice(0, 5).join(", ")} and others` : odd.join(", ");
    const facts = { count: list.count, point: name, lines: list.sorted() };
    findings.push(makeFinding(notice, evidence === "" ? facts : { ...facts, evidence }));
  }
  if (readings === 0) findings.push(makeFinding("no-readings", { point: name }));
  return findings;
}

function ofInstants({ tally: { lists, points }, rhythms }: FileEvidence): TrendFinding[] {
  const findings = listed("duplicate-identical", lists.identical);
  const { count, lines } = lists.conflicting;
  if (count > 0) findings.push(makeFinding("duplicate-conflicting", { count, lines: [...lines] }));
  const onChange = points.filter((point) => rhythms.get(point)?.sampling === "change-of-value");
  if (onChange.length > 0) {
    findings.push(makeFinding("change-of-value", pointOrPoints(onChange.map(({ name }) => name))));
  }
  const atIntervals = points.flatMap((point) => {
    const rhythm = rhythms.get(point);
    return point.instants && rhythm?.sampling === "interval"
      ? [{ name: point.name, instants: point.instants, stepSeconds: rhythm.stepSeconds }]
      : [];
  });
  return [...findings, ...gapFindings(atIntervals, points.length)];
}
