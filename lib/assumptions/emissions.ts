import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** Scope of the GHG Protocol and year that a default factor is for. */
export const EMISSION_SCOPES = {
  electricity: "scope 2, location-based, average of the grid; the default factor is of 2023",
  gas: "scope 1, fuel burned in the building; the factor does not change with the year",
  district: "scope 2, bought heat; ask the network for its factor and year",
} as const;

/** Average factors, for an inventory of emissions; marginal factors are about twice as high and never mixed in. */
export const EMISSION_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "emission-factor/electricity",
    label: "CO₂ of a kWh of electricity, average of the grid",
    value: 0.348,
    low: 0.33,
    high: 0.373,
    unit: "kg/kWh",
    source: {
      title: "EPA eGRID, US average output rate, 767.2 lb CO₂/MWh",
      edition: "eGRID2023; high end eGRID2022; low end judgement for later years",
      year: 2023,
      place: "give the factor of the building's own grid: they differ by a factor of ten",
      confidence: "second-hand",
    },
    appliesTo: "emissions",
  }),
  entry({
    id: "emission-factor/gas",
    label: "CO₂ of a kWh of natural gas",
    value: 0.181,
    low: 0.18,
    high: 0.185,
    unit: "kg/kWh",
    source: { title: "EPA emission factors, natural gas 53.06 kg CO₂/MMBtu", confidence: "second-hand" },
    appliesTo: "emissions, where reheat is from gas",
  }),
  entry({
    id: "emission-factor/district",
    label: "CO₂ of a kWh of district heat",
    value: 0.2,
    low: 0.05,
    high: 0.3,
    unit: "kg/kWh",
    source: judgement("between waste heat and a gas boiler with losses; ask the supplier for the network's factor"),
    appliesTo: "emissions, where reheat is from district heat",
  }),
];
