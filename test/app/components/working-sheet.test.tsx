import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { formulaParts } from "@/app/_components/quantity/formula-parts";
import { substitutedParts } from "@/app/_components/quantity/substituted-parts";
import { termFigures } from "@/app/_components/quantity/working-figures";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import type { Working } from "@/lib/working/working";

const working: Working = {
  formula: "Q = ρ * c_p * V_dot * dT^2 / 1000",
  terms: [
    {
      symbol: "ρ",
      label: "density of air",
      value: 1.2,
      unit: "kg/m³",
      origin: "default",
      low: 1.15,
      high: 1.22,
      assumptionId: "air-density",
    },
    {
      symbol: "c_p",
      label: "specific heat of air",
      value: 1006,
      unit: "J/(kg K)",
      origin: "default",
      source: "a handbook",
    },
    { symbol: "V_dot", label: "airflow", value: 0.214, unit: "m³/s", origin: "measured", href: "/zones/3/trends" },
    {
      symbol: "dT",
      label: "difference",
      value: -2,
      unit: "K",
      origin: "computed",
      working: {
        formula: "dT = a - b",
        terms: [],
        result: { symbol: "dT", label: "inner difference", value: -2, unit: "K" },
      },
    },
  ],
  result: { symbol: "Q", label: "cooling", value: 1.0333, unit: "kW" },
  notes: ["Only hours in cooling are counted."],
};
const textOf = (parts: ReturnType<typeof formulaParts> | null): string | undefined =>
  parts
    ?.map((part) => (part.kind === "symbol" ? part.symbol : part.kind === "power" ? `^${part.text}` : part.text))
    .join("");

describe("the typesetting of a formula", () => {
  it("finds symbols with their subscripts, powers and upright words", () => {
    const parts = formulaParts("E = max(0, T_set,occ - T_z) * n^2", ["E", "T_set,occ", "T_z", "n"]);
    expect(parts.filter((part) => part.kind === "symbol").map((part) => [part.base, part.sub])).toEqual([
      ["E", ""],
      ["T", "set,occ"],
      ["T", "z"],
      ["n", ""],
    ]);
    expect(parts.filter((part) => part.kind === "power").map((part) => part.text)).toEqual(["2"]);
    expect(textOf(parts)).toContain("max(0, ");
    expect(textOf(parts)).toContain("\u2212");
  });

  it("loses no symbol or number of any formula", () => {
    const squeeze = (text: string): string => text.replace(/[\s·*×\u2009\u2212-]/g, "");
    for (const formula of [working.formula, "C = (Q / COP + E_h) * r", "x = 1.5e-3 * sum(v_i)", "P = k * n^(-0.5)"]) {
      const text = textOf(formulaParts(formula, ["COP"])) ?? "";
      expect(squeeze(text)).toBe(squeeze(formula.replace(/\^\(([^)]*)\)/g, "^$1")));
    }
  });

  it("puts the values in, and gives up where a word has none", () => {
    expect(textOf(substitutedParts(working))).toBe(
      "1.2\u2009×\u20091,006\u2009×\u20090.214\u2009×\u2009(\u22122)^2 / 1000",
    );
    expect(substitutedParts({ ...working, formula: "Q = sum over bins of x" })).toBeNull();
    expect(substitutedParts({ ...working, formula: "Q = ρ * unknown_z" })).toBeNull();
  });
});

describe("the figures of a working", () => {
  const term = (symbol: string, value: number, unit: string) => ({
    symbol,
    label: symbol,
    value,
    unit,
    origin: "computed" as const,
  });

  it("let the terms of a sum of money add up to the printed result, to the cent", () => {
    const sum: Working = {
      formula: "C = sum of the components",
      terms: [term("C_1", 1 / 3, "USD a year"), term("C_2", 1 / 3, "USD a year"), term("C_3", 1 / 3, "USD a year")],
      result: { symbol: "C", label: "cost", value: 1, unit: "USD a year" },
    };
    expect(termFigures(sum)).toEqual(["0.34", "0.33", "0.33"]);
    const yen = JSON.parse(JSON.stringify(sum).replaceAll("USD", "JPY")) as Working;
    expect(termFigures(yen)).toEqual(["1", "0", "0"]);
  });

  it("have the digits that a product to the cent needs, and no more than were entered", () => {
    const product: Working = {
      formula: "C = E * p",
      terms: [term("E", 3734.909556, "kWh a year"), term("p", 0.092, "USD/kWh")],
      result: { symbol: "C", label: "cost", value: 343.611679, unit: "USD a year" },
    };
    expect(termFigures(product)).toEqual(["3,734.91", "0.092"]);
    expect(renderToStaticMarkup(<WorkingSheet working={product} buildingPath="" />)).toContain("343.61");
  });
});

describe("a working written out", () => {
  const html = renderToStaticMarkup(<WorkingSheet working={working} buildingPath="/buildings/7" />);

  it("shows every term with unit and origin, the result and the notes", () => {
    for (const term of working.terms) {
      expect(html).toContain(term.label);
      expect(html).toContain(term.unit);
      expect(html).toContain(term.origin);
    }
    expect(html).toContain("1.0333");
    expect(html).toContain("1.15\u20131.22");
    expect(html).toContain("Only hours in cooling are counted.");
  });

  it("leads to the assumption and to the readings behind a value", () => {
    expect(html).toContain('href="/buildings/7/assumptions#air-density"');
    expect(html).toContain('href="/buildings/7/zones/3/trends"');
  });

  it("nests the working of a term in a disclosure", () => {
    expect(html.slice(html.indexOf("<details"))).toContain("inner difference");
  });
});
