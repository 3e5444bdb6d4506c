import type { DevicePlan } from "./device-plan";
import { streamOf } from "./normal";
import type { SimulatedZone } from "./simulate-plan";

const HOURS_IN_YEAR = 8760;

/**
 * Hours a year for which a device is switched on, as its owner would tell them: for a heater those of the run,
 * carried to a year; for a fan, and for a device that left, a usual figure (judgement, no source).
 */
export function usualHours(device: DevicePlan, zone: SimulatedZone): number {
  const heater = zone.heaters.find((each) => each.device.label === device.label);
  if (heater) {
    const steps = heater.on.reduce((sum, each) => sum + each, 0);
    return heater.on.length === 0 ? 0 : (steps * HOURS_IN_YEAR) / heater.on.length;
  }
  const share = streamOf(`${device.label}/hours`)();
  if (device.retiredOn !== null) return 80 + 160 * share;
  return (zone.plan.cause === "too-little-airflow" ? 500 : 220) + 300 * share;
}
