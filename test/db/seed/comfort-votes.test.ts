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

it("has as many who want it warmer as cooler where the field votes balance: 21.6-22.9 in summer, 22.5-23.3 in winter", () => {
  for (const [season, low, high] of [
    ["summer", 21.6, 22.9],
    ["winter", 22.5, 23.3],
  ] as const) {
    const below = preferenceShares(season, low);
    const above = preferenceShares(season, high);
    expect(below.warmer).toBeGreaterThan(below.cooler);
    expect(above.warmer).toBeLessThan(above.cooler);
  }
});

it("counts May to September as summer", () => {
  expect([4, 5, 9, 10].map(voteSeason)).toEqual(["winter", "summer", "summer", "winter"]);
});
