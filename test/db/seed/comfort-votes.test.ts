import { expect, it } from "vitest";
import { preferenceShares, voteSeason } from "@/db/seed/comfort-votes";
import field from "../../check-values/field-votes/office-preference.json";

it("gives the shares that people in air-conditioned offices voted, bin by bin", () => {
  expect(field.cases.length).toBeGreaterThan(8);
  for (const { season, airTempC, votes, warmer, cooler } of field.cases) {
    const shares = preferenceShares(season === "summer" ? "summer" : "winter", airTempC);
    expect(Math.abs(shares.warmer - warmer / votes), `${season} ${airTempC} warmer`).toBeLessThan(
      field.tolerance.share,
    );
    expect(Math.abs(shares.cooler - cooler / votes), `${season} ${airTempC} cooler`).toBeLessThan(
      field.tolerance.share,
    );
  }
});

it("has as many who want it warmer as cooler at 22.3 °C in summer and 22.9 °C in winter, as was published", () => {
  for (const [season, balanceC] of [
    ["summer", 22.3],
    ["winter", 22.9],
  ] as const) {
    const surplus = (airTempC: number) => {
      const { warmer, cooler } = preferenceShares(season, airTempC);
      return warmer - cooler;
    };
    // Half of the last printed digit.
    expect(surplus(balanceC - 0.05)).toBeGreaterThan(0);
    expect(surplus(balanceC + 0.05)).toBeLessThan(0);
  }
});

it("counts May to September as summer", () => {
  expect([4, 5, 9, 10].map(voteSeason)).toEqual(["winter", "summer", "summer", "winter"]);
});
