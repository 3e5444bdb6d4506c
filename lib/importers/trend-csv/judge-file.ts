import { clockAsk, dateOrderAsk, flagAsk, unitAsks, valueColumnAsk } from "./asks";
import type { FileContext } from "./file-context";
import { makeFinding } from "./findings";
import type { finishPoints } from "./finish-points";
import type { LineList } from "./line-list";
import type { PointDraft } from "./point-draft";
import type { SectionReading } from "./read-section";
import type { TrendAnswers, TrendAsk, TrendFinding, TrendFindingCode } from "./trend-file";

export type FileEvidence = {
  context: FileContext;
  sections: readonly SectionReading[];
  drafts: readonly PointDraft[];
  finished: ReturnType<typeof finishPoints>;
  answers: TrendAnswers;
  locale?: string;
  /** True when a `sep=` line stood before the table. */
  hinted: boolean;
};

/** Findings that speak of instants, which stand for nothing while the order of day and month is unknown. */
const OF_INSTANTS: readonly TrendFindingCode[] = [
  "gap",
  "duplicate-identical",
  "duplicate-conflicting",
  "change-of-value",
];

/** What is reported about a whole file, and what has to be asked before it can be stored. */
export function judgeFile(evidence: FileEvidence): {
  findings: TrendFinding[];
  asks: TrendAsk[];
  instantsKnown: boolean;
} {
  const { context, finished, answers } = evidence;
  const { order } = context.skeleton;
  const instantsKnown = order.status !== "unknown" || answers.dateOrder !== undefined;
  const findings = [...aboveTheTable(evidence)];
  const asks: TrendAsk[] = [];
  if (order.status === "known") findings.push(makeFinding("date-order-inferred", { evidence: order.evidence }));
  if (!instantsKnown) {
    findings.push(makeFinding("date-order-unknown"));
    asks.push(dateOrderAsk(evidence.locale));
  }
  const statistics = evidence.sections.find(({ layout }) => layout.statistics)?.layout.statistics;
  if (statistics) {
    findings.push(makeFinding("interval-statistics"));
    if (!statistics.columns.has(answers.valueColumn ?? "")) asks.push(valueColumnAsk(statistics));
  }
  const flag = evidence.sections.find(({ layout }) => layout.numericFlag)?.layout.numericFlag;
  if (flag && !answers.flagColumn) asks.push(flagAsk(flag));
  if (instantsKnown) {
    findings.push(...ofClock(evidence));
    if (context.lists.nonexistent.count > 0 && !answers.clock) asks.push(clockAsk());
  }
  findings.push(...ofNames(evidence));
  const units = unitAsks(finished.points, answers);
  if (units.unknown > 0) findings.push(makeFinding("unit-unknown", { count: units.unknown }));
  asks.push(...units.asks);
  findings.push(...ofRows(context));
  findings.push(...finished.findings.filter(({ code }) => instantsKnown || !OF_INSTANTS.includes(code)));
  return { findings, asks, instantsKnown };
}

function aboveTheTable({ context, sections, hinted }: FileEvidence): TrendFinding[] {
  const first = context.skeleton.sections[0];
  if (!first || first.headerRow < 0) return [];
  const line = context.rows.lines[first.headerRow] as number;
  const lines = line - 1 - (hinted ? 1 : 0) - (sections[0]?.layout.namesRowUsed ? 1 : 0);
  return lines > 0 ? [makeFinding("preamble-skipped", { lines })] : [];
}

const listed = (code: TrendFindingCode, list: LineList): TrendFinding[] =>
  list.count > 0 ? [makeFinding(code, { count: list.count, lines: list.sorted() })] : [];

const ofClock = ({ context: { lists }, finished }: FileEvidence): TrendFinding[] => [
  ...listed("repeated-hour-resolved", lists.repeated),
  ...listed("ambiguous-local-time", lists.ambiguous),
  ...listed("nonexistent-local-time", lists.nonexistent),
  ...(finished.sorted ? [makeFinding("rows-sorted")] : []),
];

function ofNames({ sections, drafts }: FileEvidence): TrendFinding[] {
  const findings: TrendFinding[] = [];
  const fromFile = drafts.filter((draft) => draft.nameFromFile).length;
  if (fromFile > 0) findings.push(makeFinding("name-from-file", { count: fromFile }));
  const fromValues = drafts.filter((draft) => draft.unitFromValues).map((draft) => draft.name);
  const [only] = fromValues;
  if (only !== undefined) {
    findings.push(makeFinding("unit-from-values", fromValues.length === 1 ? { point: only } : { points: fromValues }));
  }
  const repeated = [...new Set(sections.flatMap((section) => [...section.repeatedNames]))];
  if (repeated.length > 0) findings.push(makeFinding("repeated-name", { count: repeated.length, points: repeated }));
  return findings;
}

function ofRows({ rows, lists }: FileContext): TrendFinding[] {
  const findings = listed("event-row", lists.event);
  if (lists.trailing.count > 0) findings.push(makeFinding("trailing-rows-ignored", { lines: lists.trailing.count }));
  if (lists.unreadable.count > 0) {
    const cutOff = !rows.endsWithLineEnd && lists.unreadable.lines.includes(rows.lines.at(-1) ?? -1);
    const evidence = "The last line breaks off, so the file may be incomplete: download it again.";
    const facts = { count: lists.unreadable.count, lines: lists.unreadable.sorted() };
    findings.push(makeFinding("row-unreadable", cutOff ? { ...facts, evidence } : facts));
  }
  return findings;
}
