import { describe, expect, it } from "vitest";
import { compareWithCase, loadCheckValues } from "@/test/support/check-values";
import { COMFORT_CHECK_FILES, comfortCheckLines, comfortCheckTable, LEFT_OUT } from "@/test/support/comfort-checks";

/** How many checks the reference lists by group (comfort-checks.json of 2026-11: 300). */
const IN_REFERENCE = {
  pmv: 70,
  limits: 8,
  zone: 29,
  airspeed: 11,
  clothing: 18,
  set: 38,
  "cooling-effect": 29,
  draught: 20,
  local: 19,
  operative: 3,
  adaptive: 5,
  "level-crossing": 5,
  statistics: 39,
  "field-data": 6,
};

for (const { path, actual } of COMFORT_CHECK_FILES)
  describe(path, () => {
    for (const check of loadCheckValues<never>(path).cases) it(check.name, () => compareWithCase(check, actual(check)));
  });

describe("the table of comfort checks", () => {
  const lines = comfortCheckLines();

  it("has every check of the reference, or leaves it out by name", () => {
    const counted = Object.fromEntries(
      Object.keys(IN_REFERENCE).map((group) => [
        group,
        lines.filter((line) => line.group === group).reduce((sum, { cases }) => sum + cases, 0) +
          LEFT_OUT.filter((each) => each.group === group).reduce((sum, { names }) => sum + names.length, 0),
      ]),
    );
    expect(counted).toEqual(IN_REFERENCE);
    expect(Object.values(IN_REFERENCE).reduce((sum, n) => sum + n, 0)).toBe(300);
  });

  it("names a source and a worst deviation within its tolerance for each file, and is printed", () => {
    for (const { path, worst, source } of lines) {
      expect(source.length, path).toBeGreaterThan(10);
      if (worst) expect(worst.share, `${path}: ${worst.at}`).toBeLessThanOrEqual(1);
    }
    expect(lines.filter(({ worst }) => worst === null).map(({ path }) => path)).toEqual(["comfort/input-limits"]);
    console.log(comfortCheckTable());
  });
});
