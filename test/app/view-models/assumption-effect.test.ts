import { expect, test } from "vitest";
import { sensitivityOf, shownEffect, swingFigure } from "@/app/buildings/[buildingId]/assumptions/effect";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import { headlineOnly } from "@/lib/overcooling/headline-only";
import { defaults, held, office } from "../../lib/overcooling/offices";

const COP = "cooling-cop/vav-reheat-high-minimum";
const ok = (changes = {}) => {
  const found = headlineOnly(office({ draws: 300, ...changes }));
  if (found.status !== "ok") throw new Error("the office is assessed");
  return found;
};
const assessed = () => {
  const found = assessBuilding(office({ draws: 300 }));
  if (found.status !== "ok") throw new Error("the office is assessed");
  return found;
};

test("shows the cost before and after with the change of each figure", () => {
  const [before, after] = [ok(), ok({ assumptions: defaults({ [COP]: held(4.5) }) })];
  const { rows, sentence } = shownEffect({ currency: "USD", before, after, refusals: [] });
  expect(rows.map((each) => each.label)).toEqual(["P10", "Most likely", "P90", "At stated values"]);
  expect(sentence).toMatch(/^The most likely cost a year would fall by \$\d/);
  expect(rows[1]?.change).toMatch(/^\u2212\d/);
});

test("says why there would be no figure, and when nothing changes", () => {
  const refusals = [
    { code: "cop-implausible", severity: "disqualifies" as const, what: "The COP is wrong.", action: "Correct it." },
  ];
  expect(shownEffect({ currency: "USD", before: ok(), after: null, refusals }).sentence).toBe(
    "With this value there would be no figure. The COP is wrong. Correct it.",
  );
  expect(shownEffect({ currency: "USD", before: ok(), after: ok(), refusals: [] }).sentence).toMatch(/stays as it is/);
});

test("follows what is typed only where one input stands behind the swing", () => {
  const result = assessed();
  const of = (id: string) => {
    const { value, low, high } = defaults().find((each) => each.id === id) as {
      value: number;
      low: number;
      high: number;
    };
    return sensitivityOf(result, { id, value, low, high });
  };
  expect(of(COP)?.stated).toBe(result.statedTotal);
  expect(of(COP)?.othersDeviation).toBeGreaterThan(0);
  expect(of("zone-sensor-offset")).toBeNull();
  expect(of("internal-gain-per-area")).toBeNull();
  expect(swingFigure(result, "zone-sensor-offset")).not.toBe("");
  expect(swingFigure(result, "internal-gain-per-area")).toBe("");
  expect(swingFigure(null, COP)).toBe("");
});
