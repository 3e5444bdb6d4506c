import { expect, it } from "vitest";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";

it("clothing is listed by insulation, activities by metabolic rate", () => {
  const rises = (values: number[]) => values.every((value, i) => i === 0 || value > (values[i - 1] as number));
  expect(rises(ENSEMBLES.map(({ clo }) => clo))).toBe(true);
  expect(rises(ACTIVITIES.map(({ met }) => met))).toBe(true);
  expect(ACTIVITIES.every(({ met, lowMet, highMet }) => lowMet >= 1 && lowMet <= met && met < highMet)).toBe(true);
});
