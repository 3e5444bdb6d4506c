import { NUMBER, type ReadCells } from "./cell-reader";
import type { ValueColumn } from "./layout";
import { noticeLists, type PointDraft } from "./point-draft";
import { proposeKind } from "./propose-kind";
import type { TrendAnswers } from "./trend-file";
import { answeredUnit, unitChoices } from "./unit-question";
import { readUnit } from "./units";

/** A point before its readings: numbers or states by its cells, and its unit by heading, cells or answer. */
export function newDraft(
  column: ValueColumn,
  cells: ReadCells,
  input: { section: number; answers: TrendAnswers },
): PointDraft {
  const { wordCount, numbers, failureCount } = cells;
  const isWords =
    wordCount > numbers || (numbers === 0 && wordCount === 0 && failureCount > 0 && column.unitAsWritten === null);
  let { unitAsWritten, unit } = column;
  let unitFromValues = false;
  if (unitAsWritten === null && cells.units.size > 0) {
    const [text] = [...cells.units].sort((a, b) => b[1] - a[1])[0] as [string, number];
    const fromValues = readUnit(text);
    unitAsWritten = fromValues?.unitAsWritten ?? null;
    unit = fromValues?.unit ?? null;
    unitFromValues = unitAsWritten !== null;
  }
  const proposal = proposeKind(column.name);
  const hasOwnAnswer = input.answers.units?.[column.name] !== undefined;
  const twoValued =
    unitAsWritten === null && !isWords && !hasOwnAnswer && isZeroOrOne(cells, proposal.kind === "occupancy");
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
    sparse: false,
    sampling: "interval",
    stepSeconds: null,
    lists: noticeLists(),
    oddValues: { "sentinel-value": new Set(), "implausible-value": new Set() },
    intervalSeconds: null,
  };
}

/** Numbers of nothing but 0 and 1, both of them there (either alone is enough for a point that says it is a state). */
function isZeroOrOne(cells: ReadCells, saysState: boolean): boolean {
  let zeros = 0;
  let ones = 0;
  for (let i = 0; i < cells.code.length; i++) {
    if (cells.code[i] !== NUMBER) continue;
    if (cells.value[i] === 0) zeros++;
    else if (cells.value[i] === 1) ones++;
    else return false;
  }
  return (zeros > 0 && ones > 0) || (saysState && zeros + ones > 0);
}
