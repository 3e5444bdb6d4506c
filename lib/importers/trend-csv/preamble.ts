import { plainHeading } from "./heading-words";
import { type NameAndUnit, readUnit } from "./units";

/** What the lines above a heading say of the points below it. */
export type Preamble = {
  pointName: string | null;
  unitText: string | null;
  /** Long name and unit by the short heading that stands for them. */
  legend: Map<string, NameAndUnit>;
};

const POINT_KEY =
  /^(?:points?|point name|names?|objects?|object name|tag|tag name|trend|trend name|trend log|log|sensor|series|channel)$/;
const UNIT_KEY = /^(?:units?|eng(?:ineering)? units?|uom|einheit)$/;

/** Reads `Point: VAV-2-14 ZN-T`, `Units,°F` and legends (`"c1","Zone 4 Temp","deg F"`). */
export function readPreamble(lines: readonly (readonly string[])[], headings: readonly string[]): Preamble {
  const preamble: Preamble = { pointName: null, unitText: null, legend: new Map() };
  const codes = new Set(headings.map((heading) => heading.trim()).filter((heading) => heading !== ""));
  for (const cells of lines) {
    const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== "");
    const first = filled[0];
    if (first === undefined) continue;
    const second = filled[1];
    if (second !== undefined && codes.has(first) && first !== second) {
      const unit = filled[2] === undefined ? null : readUnit(filled[2]);
      preamble.legend.set(first, {
        name: second,
        unitAsWritten: unit?.unitAsWritten ?? null,
        unit: unit?.unit ?? null,
      });
      continue;
    }
    const colon = /^([^:=]{1,30})[:=]\s*(.*)$/s.exec(first);
    const key = plainHeading(colon ? (colon[1] as string) : first);
    const value = colon && colon[2] !== "" ? (colon[2] as string) : (second ?? "");
    if (value === "") continue;
    if (POINT_KEY.test(key) && preamble.pointName === null) preamble.pointName = value;
    else if (UNIT_KEY.test(key) && preamble.unitText === null) preamble.unitText = value;
  }
  return preamble;
}
