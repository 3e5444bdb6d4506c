import type { AssessmentInput } from "./assessment-input";
import type { AssumptionInputs } from "./assumption-inputs";
import { exact, type Input, type Quantity, step, sum } from "./calculation/quantity";

/** Price of a saved kWh: the marginal one, the tariff's over the hours of overcooling, or a part of a blended one. */
export function priceOfElectricity(input: AssessmentInput, assumed: AssumptionInputs): Quantity {
  const { electricity, currency } = input;
  if (electricity.kind === "marginal" && electricity.pricedHours) return tariffPrice(electricity.pricedHours, currency);
  const entered = exact({
    symbol: electricity.kind === "blended" ? "p_b" : "p_e",
    label: electricity.kind === "blended" ? "blended electricity price" : "marginal electricity price",
    unit: `${currency}/kWh`,
    value: electricity.pricePerKwh,
    origin: "entered",
    source: "building settings",
    href: "/settings",
  });
  if (electricity.kind === "marginal") return entered;
  return step({
    symbol: "p_e",
    label: "electricity price of a saved kWh",
    unit: `${currency}/kWh`,
    formula: "p_e = b * p_b",
    terms: [assumed.shared("blended-price-energy-share", "b"), entered],
    compute: (share, price) => share * price,
    notes: ["A blended price has demand and fixed charges in it, which a saved kWh does not save."],
  });
}

type PricedHours = NonNullable<AssessmentInput["electricity"]["pricedHours"]>;

/** Mean price over the occupied hours of the cooling season, by the tariff's periods or blocks (reference T1). */
function tariffPrice(priced: PricedHours, currency: string): Quantity {
  const hours = priced.map(
    (each, k): Input =>
      exact({
        symbol: `H_${k + 1}`,
        label: `occupied season hours, ${each.label}`,
        unit: "h",
        value: each.hours,
        origin: "computed",
        source: "weather year, occupied hours and tariff",
        href: "/tariff",
      }),
  );
  const costs = priced.map((each, k) => {
    const price = exact({
      symbol: `p_${k + 1}`,
      label: `price of a kWh, ${each.label}`,
      unit: `${currency}/kWh`,
      value: each.pricePerKwh,
      origin: "entered",
      source: "tariff",
      href: "/tariff",
    });
    return step({
      symbol: `B_${k + 1}`,
      label: `hours at their price, ${each.label}`,
      unit: `h·${currency}/kWh`,
      formula: `B_${k + 1} = H_${k + 1} * p_${k + 1}`,
      terms: [hours[k] as Input, price],
      compute: (h, p) => h * p,
    });
  });
  const total = (symbol: string, label: string, unit: string, parts: readonly Quantity[]): Quantity =>
    sum({
      symbol,
      label,
      unit,
      formula: `${symbol} = sum of the tariff's parts`,
      parts: parts.map((quantity) => ({ symbol: quantity.symbol, label: quantity.label, quantity })),
    });
  return step({
    symbol: "p_e",
    label: "electricity price of a saved kWh",
    unit: `${currency}/kWh`,
    formula: "p_e = B / H",
    terms: [
      total("B", "all hours at their price", `h·${currency}/kWh`, costs),
      total("H", "occupied hours of the season", "h", hours),
    ],
    compute: (cost, all) => cost / all,
    notes: [
      "A saved kWh is worth the price of its hours; overcooling is taken as even over the season's occupied hours.",
    ],
  });
}
