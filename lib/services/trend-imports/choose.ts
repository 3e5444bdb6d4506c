import type { TrendAnswers } from "@/lib/importers/trend-csv/trend-file";
import { BUILDING_KINDS } from "@/lib/trends/point-kind";
import { type Present, pointFaults } from "./mapping-faults";
import type { MappingLine } from "./mapping-lines";
import type { PointChoice } from "./run-input";

/** How points are mapped when nobody is there to confirm them. */
export type ChoiceRule = { acceptProposals: boolean; answers: TrendAnswers };

export type Remark = { name: string; reason: string };

/** `open` points have no choice yet; those `leftOut` have one, to be left out. */
export type Chosen = { points: Record<string, PointChoice>; open: Remark[]; leftOut: Remark[] };

/**
 * Maps points by what is known of them, and by proposals of high or medium confidence when the rule says so. What is
 * known goes first; what cannot be settled is left open, or left out and named when proposals are accepted.
 */
export function choosePoints(lines: readonly MappingLine[], rule: ChoiceRule, present: Present): Chosen {
  const chosen: Chosen = { points: {}, open: [], leftOut: [] };
  const knownFirst = [...lines].sort((a, b) => Number(b.known !== null) - Number(a.known !== null));
  for (const line of knownFirst) settle(line, verdictOn(line, rule), rule, chosen);
  const settled = knownFirst.filter((line) => chosen.points[line.name]);
  for (const [name, fault] of pointFaults(settled, chosen.points, present)) {
    const line = lines.find((each) => each.name === name) as MappingLine;
    delete chosen.points[name];
    settle(line, { status: "unsettled", reason: fault.replace(`${name}: `, "") }, rule, chosen);
  }
  return chosen;
}

type Verdict =
  | { status: "map"; choice: PointChoice }
  | { status: "leave-out"; reason: string }
  | { status: "unsettled"; reason: string };

function settle(line: MappingLine, verdict: Verdict, rule: ChoiceRule, chosen: Chosen): void {
  const { name } = line;
  if (verdict.status === "map") {
    chosen.points[name] = verdict.choice;
    return;
  }
  const remark = { name, reason: verdict.reason };
  if (verdict.status === "unsettled" && (line.known || !rule.acceptProposals)) {
    chosen.open.push(remark);
    return;
  }
  chosen.points[name] = verdict.status === "leave-out" ? { skip: true } : { skip: true, undecided: true };
  chosen.leftOut.push(remark);
}

function verdictOn(line: MappingLine, rule: ChoiceRule): Verdict {
  const { known, proposal } = line;
  if (line.leftOutBefore) return { status: "leave-out", reason: "left out before" };
  const unit = unitOf(line, rule);
  if (known) return { status: "map", choice: { skip: false, kind: known.kind, zoneId: known.zoneId, unit } };
  if (!rule.acceptProposals) return { status: "unsettled", reason: `not mapped before; ${proposalWords(line)}` };
  if (proposal.skip) return { status: "leave-out", reason: proposal.reason };
  const { kind, zoneId, confidence } = proposal;
  const placed = zoneId !== null || (kind !== null && BUILDING_KINDS.includes(kind));
  if (kind === null || confidence === "low" || !placed) return { status: "unsettled", reason: proposal.reason };
  return { status: "map", choice: { skip: false, kind, zoneId, unit } };
}

function proposalWords({ proposal: { kind, skip, confidence, reason } }: MappingLine): string {
  if (skip) return `proposed: leave it out (${reason})`;
  return kind ? `proposed: ${kind.replaceAll("-", " ")}, ${confidence} confidence (${reason})` : reason;
}

/** Unit of a point whose file does not say it: as answered, as before, or as its values suggest. */
function unitOf({ name, unitAsk, known }: MappingLine, { acceptProposals, answers }: ChoiceRule): string | null {
  if (!unitAsk) return null;
  const fits = (unit: string | undefined): unit is string => unit !== undefined && unitAsk.choices.includes(unit);
  const offered = [answers.units?.[name], answers.unit, known?.fileUnit];
  return offered.find(fits) ?? (acceptProposals ? (unitAsk.proposal ?? null) : null);
}
