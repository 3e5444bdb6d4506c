import type { CellEvidence } from "./cell-evidence";
import { kindOfName } from "./kind-of-name";
import type { ValueColumn } from "./layout";
import { noticeLists, type PointDraft } from "./point-draft";
import type { TrendAnswers } from "./trend-file";
import { answeredUnit, unitChoices } from "./unit-question";
import { readUnit } from "./units";

/** A point before its readings: numbers or states by its cells, and its unit by heading, cells or answer. */
export function newDraft(
  column: ValueColumn,
  evidence: CellEvidence,
  input: { section: number; answers: TrendAnswers },
): PointDraft {
  const { words, numbers, failures } = evidence;
  const isWords = words > numbers || (numbers === 0 && words === 0 && failures > 0 && column.unitAsWritten === null);
  const units = Object.entries(evidence.units).sort((a, b) => b[1] - a[1]);
  let { unitAsWritten, unit } = column;
  let unitFromValues = false;
  if (unitAsWritten === null && units[0]) {
    const fromValues = readUnit(units[0][0]);
    unitAsWritten = fromValues?.unitAsWritten ?? null;
    unit = fromValues?.unit ?? null;
    unitFromValues = unitAsWritten !== null;
  }
  const proposal = kindOfName(column.name);
  const hasOwnAnswer = input.answers.units?.[column.name] !== undefined;
  const twoValued =
    unitAsWritten === null && !isWords && !hasOwnAnswer && isZeroOrOne(evidence, STATES.includes(proposal.kind));
  const isState = isWords || twoValued;
  if (!isState && unitAsWritten === null) {
    unit = answeredUnit(column.name, unitChoices(column.name, proposal), input.answers)?.unit ?? null;
  }
  return {
    name: column.name,
    column: column.column,
    section: input.section,
    kind: isState ? "state" : "numeric",
    nameFromFile: column.nameFromFile,
    unitAsWritten: isWords ? null : unitAsWritten,
    unit: isState ? null : unit,
    unitFromValues,
    chunks: [],
    presence: [],
    // A state that most rows leave blank is written only where it changes.
    sparse: isState && evidence.blanks * 2 > evidence.cells,
    lists: noticeLists(),
    oddValues: { "sentinel-value": new Set(), "implausible-value": new Set() },
    intervalSeconds: null,
  };
}

const STATES: readonly (string | null)[] = ["occupancy", "cooling-stage"];

/** Numbers of nothing but 0 and 1, both of them there (either alone is enough for a point that says it is a state). */
function isZeroOrOne({ numbers, zeros, ones }: CellEvidence, saysState: boolean): boolean {
  if (zeros + ones < numbers) return false;
  return (zeros > 0 && ones > 0) || (saysState && zeros + ones > 0);
}
