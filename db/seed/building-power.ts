import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";
import { settingPowerW } from "./device-plan";
import { normal, streamOf } from "./normal";
import type { OutdoorConditions } from "./outdoor-conditions";
import type { SimulatedZone } from "./simulate-plan";
import { SUBSTEP_SECONDS, scheduledPlugAndLightsW } from "./simulate-zone";
import { AIR_HEAT_JPM3K } from "./zone-model";

/** Lifts, server rooms, outside and stair lights, and the pumps of the boiler [kW]. Invented. */
const HOUSE_KW = { always: 9, occupied: 7 };
/** The air handler's fan at design airflow [kW per m³/s], its floor and exponent of part load. Common practice, no source. */
const FAN_KW_PER_M3PS = 1.9;
const FAN_FLOOR = 0.25;
const FAN_EXPONENT = 2.2;
/** Outdoor air that the air handler always brings in [m³/s per m² of floor] and the return air [°C]. */
const OUTDOOR_AIR_M3PS_PER_M2 = 0.000425;
const RETURN_AIR_C = 23;
/** Sensible share of the coil's load in humid weather, and the plant's COP at 25 °C outdoors with its loss for each kelvin. */
const SENSIBLE_SHARE = 0.78;
const COP_AT_25C = 3.1;
const COP_LOSS_PER_K = 0.022;
/** The economizer closes above this [°C]. */
const ECONOMIZER_TO_C = 18;
/** A packaged unit's compressor and fan while it cools [kW per m³/s of its design airflow]. */
const PACKAGED_KW_PER_M3PS = 5.2;
/** What nobody planned, as a share that wanders over hours. */
const WANDER_MEMORY = 0.985;
const WANDER_STEP = 0.009;

/**
 * Electric power of the whole demo building [kW] at each step, of the simulated zones: their lights, workplaces and space
 * heaters, the fan and the cooling plant for the air that they take, packaged units, and a base load. Heat is gas.
 */
export function buildingPowerKw(
  zones: readonly SimulatedZone[],
  calendar: DemoCalendar,
  outdoor: OutdoorConditions,
): Float64Array {
  const boxes = zones.filter(({ plan }) => plan.unit !== "packaged");
  const designM3ps = boxes.reduce((sum, { plan }) => sum + plan.model.designAirflowM3ps, 0);
  const floorM2 = boxes.reduce((sum, { plan }) => sum + plan.floorAreaM2, 0);
  const random = streamOf("building-power");
  let wander = 0;
  return Float64Array.from({ length: calendar.span.count }, (_, i) => {
    wander = WANDER_MEMORY * wander + WANDER_STEP * normal(random);
    const airM3ps = boxes.reduce((sum, { run }) => sum + (run.airflowM3ps[i] as number), 0);
    const air = {
      airM3ps,
      outdoorC: outdoor.outdoorAirTempC[i] as number,
      supplyC: outdoor.supplyAirTempC[i] as number,
    };
    const house = HOUSE_KW.always + (calendar.occupied[i] === 1 ? HOUSE_KW.occupied : 0);
    const used = zones.reduce((sum, zone) => sum + zoneW(zone, calendar, i), 0) / 1000;
    return (1 + wander) * (house + used + fanKw(airM3ps, designM3ps) + plantKw(air, floorM2));
  });
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

function fanKw(airM3ps: number, designM3ps: number): number {
  if (airM3ps <= 0 || designM3ps <= 0) return 0;
  return FAN_KW_PER_M3PS * designM3ps * Math.max(FAN_FLOOR, airM3ps / designM3ps) ** FAN_EXPONENT;
}

/** Electricity of the cooling plant: mixed air of return and outdoor air down to the supply air. */
function plantKw(
  { airM3ps, outdoorC, supplyC }: { airM3ps: number; outdoorC: number; supplyC: number },
  floorM2: number,
): number {
  if (airM3ps <= 0) return 0;
  const least = Math.min(1, (OUTDOOR_AIR_M3PS_PER_M2 * floorM2) / airM3ps);
  const wished = Math.min(1, Math.max(least, (RETURN_AIR_C - supplyC) / Math.max(0.1, RETURN_AIR_C - outdoorC)));
  const share = outdoorC < supplyC ? wished : outdoorC <= ECONOMIZER_TO_C ? 1 : least;
  const mixedC = RETURN_AIR_C + share * (outdoorC - RETURN_AIR_C);
  const sensibleKw = (AIR_HEAT_JPM3K * airM3ps * Math.max(0, mixedC - supplyC)) / 1000;
  return sensibleKw / SENSIBLE_SHARE / (COP_AT_25C * (1 - COP_LOSS_PER_K * (outdoorC - 25)));
}
