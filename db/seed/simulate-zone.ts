import type { RandomSource } from "@/lib/statistics/random";
import { boxAtRest, runBox } from "./box-controller";
import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";
import { type DeskHeater, heaterIsOn } from "./desk-heater";
import { type HeatSums, stepHeatBalance, type ZoneTemps } from "./heat-balance";
import { normal } from "./normal";
import { packagedUnitAtRest, runPackagedUnit } from "./packaged-unit";
import type { Surroundings } from "./surroundings";
import type { ZoneModel } from "./zone-model";
import { activeSetpoints, type ZoneProgramme } from "./zone-setpoints";

export type ZoneSimulation = {
  model: ZoneModel;
  programme: ZoneProgramme;
  /** What the zone sensor reads above the true air temperature. */
  sensorBiasK: number;
  /** What its first heater adds to the reading while it is on. */
  heaterAtSensorK?: number;
  unit?: "box" | "packaged";
  /** Air at each desk above the zone air, and when its holder sits there. */
  desks: readonly { offsetK: number; present: Uint8Array }[];
  heaters: readonly DeskHeater[];
};

/** A zone at the beginning of each step. */
export type ZoneRun = {
  /** True air temperature of the zone, not what its sensor reads. */
  airTempC: Float64Array;
  /** What its sensor reads. */
  sensedAirTempC: Float64Array;
  coolingSetpointC: Float64Array;
  heatingSetpointC: Float64Array;
  airflowM3ps: Float64Array;
  valveFraction: Float64Array;
  dischargeAirTempC: Float64Array;
  /** 1 in the substeps in which a packaged unit cools; empty for a box. */
  coolingOn: Uint8Array;
  /** One mask per heater: 1 while its owner has it on. */
  heaterOn: Uint8Array[];
  /** Over the whole run. */
  heat: HeatSums;
};

export const SUBSTEP_SECONDS = 180;
const SUBSTEPS = STEP_SECONDS / SUBSTEP_SECONDS;
/** Per person and workplace in use, per floor area all day, and of the lights at night. Common practice, no source. */
const PERSON_W = 75;
const WORKPLACE_W = 90;
const STANDBY_WPM2 = 1.5;
const NIGHT_LIGHTS_SHARE = 0.1;
/** Meetings, printers and habits: the gains wander about their schedule by some 10 %, with a memory of hours. */
const WANDER_MEMORY = 0.97;
const WANDER_STEP = 0.024;

/**
 * A zone through a span: heat balance of air and structure in steps of 3 minutes, with its VAV box and the heaters
 * under its desks. The same stream of numbers gives the same run.
 */
export function simulateZone(
  zone: ZoneSimulation,
  calendar: DemoCalendar,
  around: Surroundings,
  random: RandomSource,
): ZoneRun {
  const { model } = zone;
  const { count } = calendar.span;
  const setpoints = activeSetpoints(zone.programme, calendar);
  const run: ZoneRun = {
    airTempC: new Float64Array(count),
    sensedAirTempC: new Float64Array(count),
    coolingSetpointC: setpoints.coolingC,
    heatingSetpointC: setpoints.heatingC,
    airflowM3ps: new Float64Array(count),
    valveFraction: new Float64Array(count),
    dischargeAirTempC: new Float64Array(count),
    coolingOn: new Uint8Array(zone.unit === "packaged" ? count * SUBSTEPS : 0),
    heaterOn: zone.heaters.map(() => new Uint8Array(count)),
    heat: { gains: 0, solar: 0, heaters: 0, envelope: 0, partition: 0, supply: 0, stored: 0 },
  };
  const wall = model.facade ? around.wallIrradianceWpm2[model.facade] : null;
  const box = boxAtRest();
  const unit = packagedUnitAtRest();
  const startC = zone.programme.coolingSetpointC;
  let temps: ZoneTemps = { airC: startC, structureC: startC };
  let out = { airflowM3ps: 0, valveFraction: 0, dischargeAirTempC: startC };
  let wander = 0;

  for (let i = 0; i < count; i++) {
    run.airTempC[i] = temps.airC;
    run.airflowM3ps[i] = out.airflowM3ps;
    run.valveFraction[i] = out.valveFraction;
    run.dischargeAirTempC[i] = out.dischargeAirTempC;
    wander = WANDER_MEMORY * wander + WANDER_STEP * normal(random);
    const gainsW = scheduledGainsW(zone, calendar, i) * (1 + wander);
    const solarW = wall ? model.solarApertureM2 * (wall[i] as number) : 0;
    const heatersW = switchHeaters(zone, run, i);
    const offK = zone.sensorBiasK + (run.heaterOn[0]?.[i] === 1 ? (zone.heaterAtSensorK ?? 0) : 0);
    run.sensedAirTempC[i] = temps.airC + offK;
    for (let k = 0; k < SUBSTEPS; k++) {
      const now = {
        sensedAirC: temps.airC + offK,
        coolingSetpointC: setpoints.coolingC[i] as number,
        heatingSetpointC: setpoints.heatingC[i] as number,
        supplyAirTempC: around.supplyAirTempC[i] as number,
        systemOn: calendar.systemOn[i] === 1,
        seconds: SUBSTEP_SECONDS,
      };
      out = zone.unit === "packaged" ? runPackagedUnit(unit, model, now) : runBox(box, model, now);
      if (zone.unit === "packaged") run.coolingOn[i * SUBSTEPS + k] = unit.cooling ? 1 : 0;
      const loads = {
        outdoorAirC: around.outdoorAirTempC[i] as number,
        interiorAirC: around.interiorAirTempC[i] as number,
        airflowM3ps: out.airflowM3ps,
        dischargeAirC: out.dischargeAirTempC,
        gainsW,
        solarW,
        heatersW,
      };
      temps = stepHeatBalance(model, temps, loads, SUBSTEP_SECONDS, run.heat);
    }
  }
  return run;
}

function scheduledGainsW(zone: ZoneSimulation, calendar: DemoCalendar, step: number): number {
  return peopleAt(zone.desks, step) * PERSON_W + scheduledPlugAndLightsW(zone, calendar, step);
}

/** Electricity of a zone's workplaces and lights at a step, without its heaters. */
export function scheduledPlugAndLightsW(
  { model, desks }: Pick<ZoneSimulation, "model" | "desks">,
  calendar: DemoCalendar,
  step: number,
): number {
  const lightsW = model.lightsW * (calendar.lightsOn[step] === 1 ? 1 : NIGHT_LIGHTS_SHARE);
  return peopleAt(desks, step) * WORKPLACE_W + STANDBY_WPM2 * model.floorAreaM2 + lightsW;
}

function peopleAt(desks: ZoneSimulation["desks"], step: number): number {
  let people = 0;
  for (const desk of desks) people += desk.present[step] as number;
  return people;
}

/** Marks the heaters that are on in a step; gives their mean heat in W. */
function switchHeaters({ heaters, desks }: ZoneSimulation, run: ZoneRun, step: number): number {
  let heatersW = 0;
  for (const [h, heater] of heaters.entries()) {
    const on = run.heaterOn[h];
    const desk = desks[heater.desk];
    if (!on || !desk) continue;
    const wasOn = step > 0 && on[step - 1] === 1;
    if (!heaterIsOn(heater, { step, wasOn, deskAirC: (run.airTempC[step] as number) + desk.offsetK })) continue;
    on[step] = 1;
    heatersW += heater.powerW * heater.dutyFraction;
  }
  return heatersW;
}
