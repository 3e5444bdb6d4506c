import { AIR_HEAT_KJ_PER_M3K } from "@/lib/energy-model/air-heat";
import { type OutdoorHours, outdoorHours } from "@/lib/energy-model/outdoor-hours";
import type { AssessmentInput } from "./assessment-input";
import { type AssumptionInputs, assumptionInputs } from "./assumption-inputs";
import { exact, type Input, type Quantity, step } from "./calculation/quantity";
import { priceOfElectricity } from "./electricity-price";

/** What all zones of a building share, in every tier: one quantity each, so that they move together in the draws. */
export type Plant = {
  assumed: AssumptionInputs;
  targetTemp: Input;
  supplyAirTemp: Input;
  returnAirTemp: Input;
  cop: Input;
  heatEfficiency: Input;
  heatLossPerArea: Input;
  airHeat: Input;
  electricityPrice: Quantity;
  /** Null where heat has no price: it is then counted in kWh only. */
  heatPrice: Quantity | null;
  stateShare: Record<"cooling" | "deadband" | "reheat", Quantity>;
  weather: PlantWeather | null;
};

export type PlantWeather = {
  hours: OutdoorHours;
  /** Occupied hours of the cooling season. */
  seasonHours: Quantity;
  /** Correction of the economizer's share, never beyond full mechanical cooling. */
  economizerFactor: Quantity;
  /** Mean share of the season's cooling that the plant meets. */
  mechanicalFraction: Quantity;
};

export function plantOf(input: AssessmentInput): Plant {
  const assumed = assumptionInputs(input.assumptions);
  const system = input.systemType;
  const supplyAirTemp = assumed.shared("supply-air-temp", "T_sat");
  const returnAirTemp = assumed.shared("return-air-temp", "T_ra");
  const electricityPrice = priceOfElectricity(input, assumed);
  return {
    assumed,
    targetTemp: exact({
      symbol: "T_t",
      label: "target zone air temperature",
      unit: "°C",
      value: input.targetZoneAirTempC,
      origin: "entered",
      source: "building settings",
      href: "/settings",
    }),
    supplyAirTemp,
    returnAirTemp,
    cop: assumed.shared(`cooling-cop/${system}`, "COP"),
    heatEfficiency: assumed.shared(`heating-efficiency/${input.heatingFuel}`, "η"),
    heatLossPerArea: assumed.shared("building-heat-loss-per-area", "u"),
    airHeat: exact({
      symbol: "c_a",
      label: "heat of a cubic metre of air",
      unit: "kJ/m³K",
      value: AIR_HEAT_KJ_PER_M3K,
      origin: "default",
      source: "density times specific heat at sea level",
    }),
    electricityPrice,
    heatPrice: priceOfHeat(input, electricityPrice),
    stateShare: stateShares(system, assumed),
    weather: input.weather ? plantWeather(input, assumed, supplyAirTemp, returnAirTemp) : null,
  };
}

function priceOfHeat(input: AssessmentInput, electricityPrice: Quantity): Quantity | null {
  if (input.heatingFuel === "electricity") return electricityPrice;
  if (input.heatPricePerKwh === null) return null;
  return exact({
    symbol: "p_h",
    label: input.heatingFuel === "gas" ? "price of gas" : "price of district heat",
    unit: `${input.currency}/kWh`,
    value: input.heatPricePerKwh,
    origin: "entered",
    source: "building settings",
    href: "/settings",
  });
}

function stateShares(system: AssessmentInput["systemType"], assumed: AssumptionInputs): Plant["stateShare"] {
  const weights = [
    assumed.shared(`state-share-cooling/${system}`, "a_c"),
    assumed.shared(`state-share-deadband/${system}`, "a_d"),
    assumed.shared(`state-share-reheat/${system}`, "a_r"),
  ];
  const share = (index: number, symbol: string, label: string): Quantity =>
    step({
      symbol,
      label,
      unit: "",
      formula: `${symbol} = ${weights[index]?.symbol} / (a_c + a_d + a_r)`,
      terms: weights,
      compute: (cooling, deadband, reheat) =>
        (index === 0 ? cooling : index === 1 ? deadband : reheat) / Math.max(1e-9, cooling + deadband + reheat),
    });
  return {
    cooling: share(0, "s_c", "share of season hours held by the cooling setpoint"),
    deadband: share(1, "s_d", "share of season hours at minimum airflow"),
    reheat: share(2, "s_r", "share of season hours in reheat"),
  };
}

function plantWeather(
  { weather, hasEconomizer }: AssessmentInput,
  assumed: AssumptionInputs,
  supplyAirTemp: Input,
  returnAirTemp: Input,
): PlantWeather | null {
  if (!weather) return null;
  const hours = outdoorHours(weather.dryBulbC, weather.occupied);
  const seasonHours = step({
    symbol: "H_s",
    label: "occupied hours of the weather year with outdoor air at or above the supply air temperature",
    unit: "h",
    formula: "H_s = hours with T_o >= T_sat",
    terms: [supplyAirTemp],
    compute: (sat) => hours.hoursAtOrAbove(sat),
  });
  if (!hasEconomizer) {
    const all = (symbol: string, label: string): Input =>
      exact({ symbol, label, unit: "", value: 1, origin: "entered", source: "no economizer", href: "/settings" });
    return {
      hours,
      seasonHours,
      economizerFactor: all("f_m", "economizer factor"),
      mechanicalFraction: all("m", "share of cooling that the plant meets"),
    };
  }
  const faultless = step({
    symbol: "m_w",
    label: "mean share of cooling that the plant meets with a faultless economizer",
    unit: "",
    formula: "m_w = mean of min(1, max(0, (T_o - T_sat) / (T_ra - T_sat))) over the hours with T_o >= T_sat",
    terms: [supplyAirTemp, returnAirTemp],
    compute: (supplyAirTempC, returnAirTempC) => hours.meanMechanicalFraction({ supplyAirTempC, returnAirTempC }),
  });
  const economizerFactor = step({
    symbol: "f_m",
    label: "economizer factor, held so that the plant meets no more than all of the cooling",
    unit: "",
    formula: "f_m = min(f_e, 1 / m_w)",
    terms: [assumed.shared("economizer-error-factor", "f_e"), faultless],
    compute: (factor, share) => Math.min(factor, 1 / share),
  });
  return {
    hours,
    seasonHours,
    economizerFactor,
    mechanicalFraction: step({
      symbol: "m",
      label: "mean share of the season's cooling that the plant meets",
      unit: "",
      formula: "m = f_m * m_w",
      terms: [economizerFactor, faultless],
      compute: (factor, share) => factor * share,
    }),
  };
}
