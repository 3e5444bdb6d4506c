import { comfortZone } from "@/lib/comfort/comfort-zone";
import type { SeasonRecord } from "@/lib/comfort-reports/both-sides/season-record";
import type { WeatherYearClock } from "@/lib/energy-model/weather-year-clock";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { exact, type Quantity, step } from "@/lib/overcooling/calculation/quantity";
import { runStudy, type Study } from "@/lib/overcooling/calculation/study";
import { workingOf } from "@/lib/overcooling/calculation/working-of";
import { firstYearFraction } from "@/lib/overcooling/components/first-year-fraction";
import { type Plant, plantOf } from "@/lib/overcooling/plant";
import type { Term } from "@/lib/working/working";
import { COOL_CLOTHING_CLO, DESK_CONDITION, WARM_CLOTHING_CLO } from "./desk-condition";
import { gatherLiveZones, type ZoneFacts } from "./gather-live-zones";
import { type LiveBuilding, SHARED_VALUES, type SharedName, type SharedValue } from "./live-building";
import { seasonCalendar } from "./season-calendar";

/** Draws that go to the browser: the first of the assessment's. P10 and P90 of 300 are known to about 2 % of their rank. */
const DRAWS = 300;

/** Air temperatures against which records count their hours [°C]. */
const TEMPS_C = [22, 22.5, 23, 23.5, 24, 24.5, 25];

export type BuildingFacts = {
  tier: { number: number; label: string };
  occupiedDays: number;
  clock: WeatherYearClock;
  reports: SeasonRecord | null;
  zones: ReadonlyMap<number, ZoneFacts>;
};

/** What proposals for a building are worked out from; null without a weather year, since no plant can be reckoned then. */
export function gatherLiveBuilding(input: AssessmentInput, facts: BuildingFacts): LiveBuilding | null {
  const plant = plantOf(input);
  if (!plant.weather || !input.weather) return null;
  const quantities = sharedQuantities(input, plant, plant.weather.mechanicalFraction);
  const study = runStudy(Object.values(quantities), { seed: input.seed, draws: DRAWS });
  const shared = Object.fromEntries(
    SHARED_VALUES.map((name) => [name, sharedValue(quantities[name], study)]),
  ) as Record<SharedName, SharedValue>;
  const calendar = seasonCalendar({
    ...input.weather,
    clock: facts.clock,
    supplyAirTempC: study.stated(plant.supplyAirTemp),
    returnAirTempC: study.stated(plant.returnAirTemp),
    hasEconomizer: input.hasEconomizer,
  });
  return {
    currency: input.currency,
    tier: facts.tier.number,
    tierLabel: facts.tier.label,
    shared,
    heatPricePerKwh: input.heatingFuel === "electricity" ? null : input.heatPricePerKwh,
    isHeatElectric: input.heatingFuel === "electricity",
    costPerReport: input.complaint && input.complaint.hours * input.complaint.labourPricePerHour,
    occupiedDays: facts.occupiedDays,
    calendar,
    reports: facts.reports,
    circuits: [],
    tempsC: TEMPS_C,
    comfort: comfortRange(),
    zones: gatherLiveZones(input, facts.zones, TEMPS_C, calendar),
  };
}

type SharedQuantities = Record<SharedName, Quantity>;

function sharedQuantities(input: AssessmentInput, plant: Plant, mechanicalFraction: Quantity): SharedQuantities {
  const { assumed } = plant;
  const noHeatFactor = exact({ symbol: "e_q", label: "electric reheat", unit: "kg/kWh", value: 0, origin: "computed" });
  return {
    heatLossPerArea: plant.heatLossPerArea,
    cop: plant.cop,
    mechanicalFraction,
    supplyAirTemp: plant.supplyAirTemp,
    returnAirTemp: plant.returnAirTemp,
    heatEfficiency: plant.heatEfficiency,
    requiredAirflowFraction: assumed.shared("required-airflow-fraction", "r_req"),
    outdoorAirPerArea: assumed.shared("outdoor-airflow-per-area", "o"),
    fanPowerPerAirflow: assumed.shared("fan-power-per-airflow", "w_f"),
    fanSavingFactor: assumed.shared("fan-saving-factor", "k_f"),
    heaterInSeasonFraction: assumed.shared("heater-in-overcooled-hours-fraction", "f_o"),
    heaterRemovalFraction: assumed.shared("heater-removal-fraction", "r_h"),
    changeKeptFraction: step({
      symbol: "r_s",
      label: "share of the first year in which a change lasts",
      unit: "",
      formula: "r_s = L * (1 - exp(-1 / L))",
      terms: [assumed.shared("change-life", "L")],
      compute: firstYearFraction,
      notes: ["A change is undone at a steady rate, once in L years on average."],
    }),
    electricityPrice: plant.electricityPrice,
    electricityEmissions: assumed.shared("emission-factor/electricity", "e_e"),
    heatEmissions:
      input.heatingFuel === "electricity"
        ? noHeatFactor
        : assumed.shared(`emission-factor/${input.heatingFuel}`, "e_q"),
  };
}

function sharedValue(quantity: Quantity, study: Study): SharedValue {
  const draws = Array.from(study.draws(quantity), (each) => Number(each.toPrecision(7)));
  return { term: termOf(quantity, study), draws };
}

/** The quantity as a term of other workings, with its own working or its source. */
function termOf(quantity: Quantity, study: Study): Term {
  const { symbol, label, unit } = quantity;
  if (quantity.kind !== "input") {
    const working = workingOf(quantity, study, 1);
    return { symbol, label, unit, value: study.stated(quantity), origin: "computed", working };
  }
  const { value, low, high, origin, source, assumptionId, href } = quantity;
  return {
    symbol,
    label,
    unit,
    value,
    origin,
    ...(high > low ? { low, high } : {}),
    ...(source ? { source } : {}),
    ...(assumptionId ? { assumptionId } : {}),
    ...(href ? { href } : {}),
  };
}

function comfortRange(): LiveBuilding["comfort"] {
  const { lowerC } = comfortZone({ ...DESK_CONDITION, clothingClo: COOL_CLOTHING_CLO });
  const { upperC } = comfortZone({ ...DESK_CONDITION, clothingClo: WARM_CLOTHING_CLO });
  if (lowerC === null || upperC === null) throw new Error("the comfort range lies outside the method's limits");
  return {
    lowerC,
    upperC,
    source:
      "predicted votes within half a point of neutral (ISO 7730 method, ASHRAE 55): 1.1 met, 50 % relative humidity, 0.1 m/s, surfaces as warm as air, 0.7 clo at the cool end and 0.5 clo at the warm end",
  };
}
