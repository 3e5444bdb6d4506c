import { coilLatentKw } from "./coil-latent";
import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";
import { settingPowerW } from "./device-plan";
import { normal, streamOf } from "./normal";
import { restOfBuilding } from "./rest-of-building";
import type { SimulatedZone } from "./simulate-plan";
import { SUBSTEP_SECONDS, scheduledPlugAndLightsW } from "./simulate-zone";
import type { Surroundings } from "./surroundings";
import { AIR_HEAT_JPM3K } from "./zone-model";

/** Lifts, server rooms, outside and stair lights, and the pumps of the boiler [kW]. Invented. */
const HOUSE_KW = { always: 9, occupied: 7 };
/** The air handler's fan at design airflow [kW per m³/s], its floor and exponent of part load. Common practice, no source. */
const FAN_KW_PER_M3PS = 1.9;
const FAN_FLOOR = 0.25;
const FAN_EXPONENT = 2.2;
/** Outdoor air that the air handler always brings in [m³/s per m² of floor]. */
export const OUTDOOR_AIR_M3PS_PER_M2 = 0.000425;
/** Water that a person at a desk gives off [kg/s], some 55 W. Common practice, no source. */
const PERSON_WATER_KG_PER_SECOND = 2.2e-5;
/** The plant's COP at 25 °C outdoors with its loss for each kelvin. */
const COP_AT_25C = 3.1;
const COP_LOSS_PER_K = 0.022;
/** The economizer closes above this [°C]. */
const ECONOMIZER_TO_C = 18;
/** A packaged unit's compressor and fan while it cools [kW per m³/s of its design airflow]. */
const PACKAGED_KW_PER_M3PS = 5.2;
/** What nobody planned, as a share that wanders over hours. */
const WANDER_MEMORY = 0.985;
const WANDER_STEP = 0.009;

/** Electric power by what takes it [kW], at each step. */
export type PowerParts = Record<"house" | "zones" | "fan" | "plant", Float64Array>;

/**
 * Electric power of the whole demo building [kW] at each step, of the simulated zones: their lights, workplaces and space
 * heaters, the fan and the cooling plant for the air that they take, packaged units, and a base load. Heat is gas.
 */
export function buildingPowerKw(
  zones: readonly SimulatedZone[],
  calendar: DemoCalendar,
  around: Surroundings,
): Float64Array {
  const { house, zones: used, fan, plant } = powerParts(zones, calendar, around);
  const random = streamOf("building-power");
  let wander = 0;
  return house.map((kw, i) => {
    wander = WANDER_MEMORY * wander + WANDER_STEP * normal(random);
    return (1 + wander) * (kw + (used[i] as number) + (fan[i] as number) + (plant[i] as number));
  });
}

/** The same by parts and without what nobody planned. */
export function powerParts(zones: readonly SimulatedZone[], calendar: DemoCalendar, around: Surroundings): PowerParts {
  const { count } = calendar.span;
  const boxes = zones.filter(({ plan }) => plan.unit !== "packaged");
  const designM3ps = boxes.reduce((sum, { plan }) => sum + plan.model.designAirflowM3ps, 0);
  const floorM2 = boxes.reduce((sum, { plan }) => sum + plan.floorAreaM2, 0);
  const rest = restOfBuilding(boxes, calendar, around);
  const parts: PowerParts = {
    house: new Float64Array(count),
    zones: new Float64Array(count),
    fan: new Float64Array(count),
    plant: new Float64Array(count),
  };
  for (let i = 0; i < count; i++) {
    parts.house[i] = HOUSE_KW.always + (calendar.occupied[i] === 1 ? HOUSE_KW.occupied : 0);
    parts.zones[i] = zones.reduce((sum, zone) => sum + zoneW(zone, calendar, i), 0) / 1000;
    const air = returnAir(boxes, i, rest.lessAirM3ps[i] as number, around.interiorAirTempC[i] as number);
    parts.fan[i] = fanKw(air.airM3ps, designM3ps);
    const people = boxes.reduce((sum, { desks }) => sum + desks.reduce((n, each) => n + (each.present[i] ?? 0), 0), 0);
    parts.plant[i] = plantKw(
      {
        ...air,
        outdoorC: around.outdoorAirTempC[i] as number,
        outdoorDewPointC: around.outdoorDewPointC[i] as number,
        supplyC: around.supplyAirTempC[i] as number,
        peopleKgPerSecond: people * PERSON_WATER_KG_PER_SECOND,
      },
      floorM2,
    );
  }
  return parts;
}

/** Lights, workplaces, heaters and the packaged unit of a zone [W]. */
function zoneW({ plan, desks, heaters, run }: SimulatedZone, calendar: DemoCalendar, i: number): number {
  let watts = scheduledPlugAndLightsW({ model: plan.model, desks }, calendar, i);
  for (const { device, on } of heaters)
    if (on[i] === 1) watts += settingPowerW(device, device.usedSetting) * device.dutyFraction;
  if (plan.unit === "packaged") {
    const substeps = STEP_SECONDS / SUBSTEP_SECONDS;
    let cooling = 0;
    for (let k = 0; k < substeps; k++) cooling += run.coolingOn[i * substeps + k] as number;
    watts += (1000 * PACKAGED_KW_PER_M3PS * plan.model.designAirflowM3ps * cooling) / substeps;
  }
  return watts;
}

/** Air of all boxes and its mean temperature on the way back, less the air that the rest of the building is spared. */
function returnAir(
  boxes: readonly SimulatedZone[],
  i: number,
  lessAirM3ps: number,
  interiorC: number,
): { airM3ps: number; returnC: number } {
  let airM3ps = 0;
  let warmth = 0;
  for (const { run } of boxes) {
    const own = run.airflowM3ps[i] as number;
    airM3ps += own;
    warmth += own * (run.airTempC[i] as number);
  }
  const left = Math.max(0, airM3ps - lessAirM3ps);
  if (left <= 0) return { airM3ps: 0, returnC: interiorC };
  return { airM3ps: left, returnC: (warmth - (airM3ps - left) * interiorC) / left };
}

function fanKw(airM3ps: number, designM3ps: number): number {
  if (airM3ps <= 0 || designM3ps <= 0) return 0;
  return FAN_KW_PER_M3PS * designM3ps * Math.max(FAN_FLOOR, airM3ps / designM3ps) ** FAN_EXPONENT;
}

/** Electricity of the cooling plant: mixed air of return and outdoor air down to the supply air, with the water in it. */
function plantKw(
  now: {
    airM3ps: number;
    returnC: number;
    outdoorC: number;
    outdoorDewPointC: number;
    supplyC: number;
    peopleKgPerSecond: number;
  },
  floorM2: number,
): number {
  const { airM3ps, returnC, outdoorC, supplyC } = now;
  if (airM3ps <= 0) return 0;
  const least = Math.min(1, (OUTDOOR_AIR_M3PS_PER_M2 * floorM2) / airM3ps);
  const wished = Math.min(1, Math.max(least, (returnC - supplyC) / Math.max(0.1, returnC - outdoorC)));
  const outdoorShare = outdoorC < supplyC ? wished : outdoorC <= ECONOMIZER_TO_C ? 1 : least;
  const mixedC = returnC + outdoorShare * (outdoorC - returnC);
  const sensibleKw = (AIR_HEAT_JPM3K * airM3ps * Math.max(0, mixedC - supplyC)) / 1000;
  if (sensibleKw === 0) return 0;
  const latentKw = coilLatentKw({ ...now, outdoorShare });
  return (sensibleKw + latentKw) / plantCop(outdoorC);
}

/** COP of the cooling plant with its pumps and condenser, by outdoor air. */
export const plantCop = (outdoorC: number): number => COP_AT_25C * (1 - COP_LOSS_PER_K * (outdoorC - 25));
