import { describe, expect, it } from "vitest";
import { type CheckCase, checkedFile, compareWithCase } from "./check-values";

const check: CheckCase<object> = { name: "one", inputs: {}, expected: { powerW: 28.8 }, tolerance: { powerW: 0.05 } };
const file = { source: "a handbook", obtained: "hand", how: "by hand", cases: [check] };

describe("check values", () => {
  it("refuses a file that checks nothing", () => {
    expect(() => checkedFile({ ...file, cases: [] }, "a")).toThrow("nothing is checked");
    expect(() => checkedFile({ ...file, cases: [{ ...check, expected: {} }] }, "a")).toThrow("expects nothing");
  });

  it("refuses a number without a source or a tolerance", () => {
    expect(() => checkedFile({ ...file, source: " " }, "a")).toThrow("source");
    expect(() => checkedFile({ ...file, cases: [{ ...check, tolerance: {} }] }, "a")).toThrow("tolerance");
  });

  it("fails on a value off by more than the tolerance, missing or not a number", () => {
    expect(() => compareWithCase(check, { powerW: 28.84 })).not.toThrow();
    expect(() => compareWithCase(check, { powerW: 28.86 })).toThrow("powerW");
    expect(() => compareWithCase(check, { powerW: -28.8 })).toThrow("powerW");
    expect(() => compareWithCase(check, {})).toThrow("powerW");
    expect(() => compareWithCase(check, { powerW: Number.NaN })).toThrow("powerW");
    expect(() => compareWithCase(check, { powerW: [28.8, 1] })).toThrow("2 values");
  });
});
