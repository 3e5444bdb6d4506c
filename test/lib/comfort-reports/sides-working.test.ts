import { expect, it } from "vitest";
import { expectedReports } from "@/lib/comfort-reports/both-sides/expected-reports";
import { fitReportModel } from "@/lib/comfort-reports/both-sides/fit-report-model";
import { expectedWorking, shareWorking } from "@/lib/comfort-reports/both-sides/sides-working";
import { VOTE_PRIORS } from "@/lib/comfort-reports/both-sides/vote-prior";
import { wantedShares } from "@/lib/comfort-reports/both-sides/wanted-shares";
import type { Working } from "@/lib/working/working";
import { plantedReports } from "@/test/bench/data/planted-reports";

/** Works a working out anew from its terms' printed values, all the way down, and holds each result against it. */
function recompute({ formula, terms, result }: Working): number {
  for (const term of terms) if (term.working) expect(recompute(term.working)).toBeCloseTo(term.value, 9);
  const right = (formula.split("=")[1] ?? "").replaceAll("exp", "Math.exp").replaceAll("ln", "Math.log");
  const names = terms.map(({ symbol }) => symbol);
  const value = new Function(...names, `return ${right};`)(...terms.map((term) => term.value)) as number;
  expect(Math.abs(value / result.value - 1)).toBeLessThan(1e-9);
  return value;
}

it("workings of both sides, recomputed from their terms down to desk-hours and logits, give the figures", () => {
  const { zones, planned } = plantedReports(7, VOTE_PRIORS.summer);
  const model = fitReportModel(zones, VOTE_PRIORS.summer);
  for (const shiftK of [0, 1.5]) {
    const expected = expectedReports([{ model, zones: planned }], () => shiftK);
    const shares = wantedShares(model, 22 + shiftK);
    const cold = expectedWorking(model, planned, { side: 0, shiftK, expected: expected.tooCold });
    const warm = expectedWorking(model, planned, { side: 1, shiftK, expected: expected.tooWarm });
    expect(recompute(cold)).toBeCloseTo(expected.tooCold.median, 9);
    expect(recompute(warm)).toBeCloseTo(expected.tooWarm.median, 9);
    const warmer = shareWorking(model, { side: 0, airTempC: 22 + shiftK, share: shares.warmer });
    const cooler = shareWorking(model, { side: 1, airTempC: 22 + shiftK, share: shares.cooler });
    expect(recompute(warmer)).toBeCloseTo(100 * shares.warmer.median, 9);
    expect(recompute(cooler)).toBeCloseTo(100 * shares.cooler.median, 9);
    for (const working of [cold, warm, warmer, cooler]) expect(working.notes?.join()).toMatch(/chance of 90 %/);
  }
});
