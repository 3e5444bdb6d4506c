import { describe, expect, it } from "vitest";
import { assumptionsUsed, type Term, type Working } from "@/lib/working/working";

const term = (symbol: string, more: Partial<Term> = {}): Term => ({
  symbol,
  label: symbol,
  value: 1,
  unit: "",
  origin: "default",
  ...more,
});
const working = (terms: Term[]): Working => ({
  formula: "x",
  terms,
  result: { symbol: "x", label: "x", value: 1, unit: "" },
});

describe("assumptions used in a working", () => {
  it("are found at any depth, each once, in order of their first use", () => {
    const inner = working([term("a", { assumptionId: "cop" }), term("b", { assumptionId: "reheat" })]);
    const middle = working([term("c", { working: inner, assumptionId: "price" })]);
    expect(assumptionsUsed(working([term("d", { assumptionId: "cop" }), term("e", { working: middle })]))).toEqual([
      "cop",
      "price",
      "reheat",
    ]);
  });

  it("are none where every value was measured", () => {
    expect(assumptionsUsed(working([term("a", { origin: "measured" })]))).toEqual([]);
  });
});
