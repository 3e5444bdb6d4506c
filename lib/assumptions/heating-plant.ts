import type { Assumption } from "./assumption";
import { COMSTOCK, entry, judgement } from "./entry";

/** Efficiency from bought energy to heat in the reheat coil. */
export const HEATING_PLANT_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "heating-efficiency/gas",
    label: "efficiency of boiler and hot water distribution",
    value: 0.75,
    low: 0.6,
    high: 0.85,
    unit: "kWh/kWh",
    source: { ...COMSTOCK, place: "boilers 0.80; distribution of 0.94 and the span are judgement" },
    appliesTo: "heat bought for reheat",
  }),
  entry({
    id: "heating-efficiency/electricity",
    label: "efficiency of electric reheat coils",
    value: 1,
    low: 1,
    high: 1,
    unit: "kWh/kWh",
    source: judgement("resistance heat in the air stream; give a COP where a heat pump makes the hot water"),
    appliesTo: "heat bought for reheat",
  }),
  entry({
    id: "heating-efficiency/district",
    label: "share of metered district heat that reaches the coils",
    value: 0.94,
    low: 0.85,
    high: 1,
    unit: "kWh/kWh",
    source: judgement("hot water distribution inside the building"),
    appliesTo: "heat bought for reheat",
  }),
];
