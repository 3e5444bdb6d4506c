import { describe, expect, it } from "vitest";
import { causesByTable, DECISION_TABLE } from "@/lib/trends/diagnosis/decision-table";
import { evidenceWords } from "@/lib/trends/diagnosis/evidence-words";
import { ROW_OF } from "@/lib/trends/diagnosis/row-of";
import { CAUSE_CODES, type CauseCode, type ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { trendFindingWords } from "@/lib/trends/findings";
import { quantityWords } from "@/lib/trends/quantity-words";
import { TABLE_CASES } from "@/test/support/table-cases";

const codesOf = (zone: ZoneEvidence): CauseCode[] => causesByTable(zone).map(({ code }) => code);

const near = TABLE_CASES.flatMap(({ row, code, nearly }) =>
  Object.entries(nearly).map(([but, zone]) => ({ row, code, but, zone })),
);

describe("the decision table by made series", () => {
  it.each(TABLE_CASES)("row $row names $code", ({ code, shows }) => {
    expect(codesOf(shows())).toContain(code);
  });

  it.each(near)("row $row does not name $code: $but", ({ code, zone }) => {
    expect(codesOf(zone())).not.toContain(code);
  });

  it("has seventeen rows in their order, and a case for and against every rule", () => {
    expect(DECISION_TABLE.map(({ row }) => row)).toEqual(Array.from({ length: 17 }, (_, i) => i + 1));
    const rules = DECISION_TABLE.reduce((sum, { rules }) => sum + rules.length, 0);
    const cases = new Set(TABLE_CASES.map(({ code }) => code));
    expect(cases.size).toBe(rules);
    // The lever's own evidence stands under the table.
    expect(CAUSE_CODES.filter((code) => !cases.has(code))).toEqual([
      "degree-hours-at-minimum",
      "degree-hours-in-cooling",
    ]);
    for (const { code, row, nearly } of TABLE_CASES) {
      expect(ROW_OF[code]).toBe(row);
      expect(Object.keys(nearly).length, code).toBeGreaterThan(0);
    }
  });

  it.each(TABLE_CASES)("row $row says of $code what was seen, in whole sentences", ({ code, shows }) => {
    const cause = causesByTable(shows()).find((each) => each.code === code);
    if (!cause) throw new Error(`${code} is not named`);
    for (const unit of ["C", "F"] as const) {
      const words = quantityWords(unit, "UTC");
      const { what, action } = trendFindingWords(cause, words);
      const line = `${what} ${action} ${evidenceWords(cause, words)}`;
      expect(line).not.toMatch(/undefined|NaN|null|unknown|\b1 (zones|reports|heaters|times|jumps|starts)\b/);
      expect(line).toMatch(/Row \d+ of the decision table; read from the trend/);
    }
    const numbers = Object.values(cause.evidence).filter((each) => typeof each === "number");
    expect(numbers.length, "figures as evidence").toBeGreaterThan(1);
  });
});
