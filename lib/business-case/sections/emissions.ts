import { type CaseSection, number, range, text } from "../case-document";
import type { CaseInput } from "../case-input";

/** Emissions of a year by the factors of the building, with their scope and year. */
export function emissionsSection(input: CaseInput): CaseSection {
  const { electricKwh, heatKwh, emissionsKgCo2, assumptions, emissionScope } = input;
  const factors = assumptions.filter(({ id }) => id.startsWith("emission-factor/"));
  return {
    id: "emissions",
    title: "Emissions",
    startsPage: false,
    blocks: [
      {
        kind: "paragraph",
        runs: [
          "Saved in the first year: ",
          range(emissionsKgCo2, "kg CO₂"),
          `. ${emissionScope} Average factors are for an inventory; marginal ones are about twice as high and are not mixed in.`,
        ],
      },
      {
        kind: "table",
        id: "emissions",
        caption: "Energy and emissions saved in the first year",
        columns: [
          { head: "What", align: "text" },
          { head: "Stated", align: "number" },
          { head: "80 % range", align: "number" },
        ],
        rows: [
          [text("Electricity"), number(electricKwh.stated, 1, "kWh"), range(electricKwh, "kWh")],
          [text("Heat"), number(heatKwh.stated, 1, "kWh"), range(heatKwh, "kWh")],
          [text("CO₂"), number(emissionsKgCo2.stated, 1, "kg"), range(emissionsKgCo2, "kg")],
        ],
        total: null,
      },
      {
        kind: "table",
        id: "factors",
        caption: "Emission factors, as they stood at issue",
        columns: [
          { head: "Factor", align: "text" },
          { head: "Value", align: "number" },
          { head: "Source", align: "text" },
        ],
        rows: factors.map(({ label, value, unit, source }) => [text(label), number(value, 3, unit), text(source)]),
        total: null,
      },
    ],
  };
}
