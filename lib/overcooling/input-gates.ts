import type { Finding } from "@/lib/findings/finding";
import type { AssessmentInput } from "./assessment-input";
import { assumptionInputs } from "./assumption-inputs";

/** Seasonal COP outside which a plant is misentered (reference J). */
const COP_LIMITS = { low: 1.5, high: 7 } as const;
const HOURS_IN_WEATHER_YEAR = 8760;
/** Least distance of the target from the supply air for the airflow ratios to mean anything [K]. Judgement. */
const LEAST_ABOVE_SUPPLY_K = 3;

/** What makes every figure of a building meaningless. Each finding disqualifies. */
export function inputFaults(input: AssessmentInput): Finding[] {
  const { resolved } = assumptionInputs(input.assumptions);
  const faults: Finding[] = [];
  const fault = (code: string, evidence: Finding["evidence"]): void => {
    faults.push({ code, severity: "disqualifies", evidence });
  };
  if (!(input.floorAreaM2 > 0)) fault("floor-area-impossible", { floorAreaM2: input.floorAreaM2 });
  const prices = [input.electricity.pricePerKwh, input.electricity.demandPricePerKw, input.heatPricePerKwh];
  for (const price of prices) {
    if (price !== null && !(price >= 0 && Number.isFinite(price))) fault("price-impossible", { price });
  }
  const cop = resolved(`cooling-cop/${input.systemType}`);
  if (!(cop.low >= COP_LIMITS.low && cop.high <= COP_LIMITS.high)) {
    fault("cop-implausible", {
      cop: cop.value,
      low: cop.low,
      high: cop.high,
      least: COP_LIMITS.low,
      most: COP_LIMITS.high,
    });
  }
  const supply = resolved("supply-air-temp");
  const returned = resolved("return-air-temp");
  if (!(returned.low > supply.high)) {
    fault("air-temperatures-crossed", { supplyHighC: supply.high, returnLowC: returned.low });
  }
  if (!(input.targetZoneAirTempC >= supply.high + LEAST_ABOVE_SUPPLY_K && input.targetZoneAirTempC <= 32)) {
    fault("target-impossible", { targetC: input.targetZoneAirTempC, supplyHighC: supply.high });
  }
  for (const id of [
    `heating-efficiency/${input.heatingFuel}`,
    "required-airflow-fraction",
    "building-heat-loss-per-area",
  ]) {
    const { low, label } = resolved(id);
    if (!(low > 0)) fault("assumption-not-above-zero", { id, label, low });
  }
  if (input.weather) {
    const rows = input.weather.dryBulbC.length;
    if (rows !== HOURS_IN_WEATHER_YEAR || input.weather.occupied.length !== rows) {
      fault("weather-not-a-year", { hours: rows, occupiedHours: input.weather.occupied.length });
    }
  }
  return faults;
}
