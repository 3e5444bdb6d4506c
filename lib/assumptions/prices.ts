import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

export const PRICE_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "blended-price-energy-share",
    label: "part of a blended electricity price that a saved kWh is worth",
    value: 0.8,
    low: 0.7,
    high: 1,
    unit: "",
    source: judgement("the rest of a bill divided by its kWh is demand and fixed charges"),
    appliesTo: "price of electricity, where only a blended one is known",
  }),
];
