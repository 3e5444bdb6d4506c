import { describe, expect, it } from "vitest";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { clothingByOutdoorAir, clothingOf, dynamicClothing } from "@/lib/comfort/clothing";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

describe("clothing", () => {
  for (const check of loadCheckValues<{ clo: number; met: number }>("comfort/clothing-dynamic").cases)
    it(check.name, () => compareWithCase(check, { clo: dynamicClothing(check.inputs.clo, check.inputs.met) }));
  for (const check of loadCheckValues<{ tOut0600: number }>("comfort/clothing-outdoor").cases)
    it(check.name, () => compareWithCase(check, { clo: clothingByOutdoorAir(check.inputs.tOut0600) }));
  for (const check of loadCheckValues<{ garments: number[] }>("comfort/clothing-sum").cases)
    it(check.name, () => {
      const rule = check.name.endsWith("iso9920") ? "iso-9920" : "ashrae-55";
      compareWithCase(check, { clo: clothingOf(check.inputs.garments, rule) });
    });

  it("is listed by insulation, activities by metabolic rate", () => {
    const rises = (values: number[]) => values.every((value, i) => i === 0 || value > (values[i - 1] as number));
    expect(rises(ENSEMBLES.map(({ clo }) => clo))).toBe(true);
    expect(rises(ACTIVITIES.map(({ met }) => met))).toBe(true);
    expect(ACTIVITIES.every(({ met, lowMet, highMet }) => lowMet >= 1 && lowMet <= met && met < highMet)).toBe(true);
  });
});
