import type { ControlEffect } from "./control-effect";
import { COVERAGE_FACTOR, PLUG_METER_HALF_WIDTH_FRACTION, rectangularUncertainty } from "./measurement-uncertainty";

/**
 * What two readings at the ends of a control say of it. One meter, all else left alone: the readings differ when their difference
 * is more than its expanded uncertainty (JCGM 100:2008, k = 2), each reading within ± 2 % and half of its last digit.
 */
export function controlEvidence(read: {
  lowEndW: number;
  highEndW: number;
  changesSpeed: boolean;
  resolutionW?: number;
}): { differenceW: number; expandedUncertaintyW: number; effect: ControlEffect } {
  const of = (powerW: number): number =>
    rectangularUncertainty(PLUG_METER_HALF_WIDTH_FRACTION * powerW + (read.resolutionW ?? 0.1) / 2);
  const expandedUncertaintyW = COVERAGE_FACTOR * Math.hypot(of(read.lowEndW), of(read.highEndW));
  const differenceW = read.highEndW - read.lowEndW;
  const changesPower = Math.abs(differenceW) > expandedUncertaintyW;
  return {
    differenceW,
    expandedUncertaintyW,
    effect: changesPower ? "power" : read.changesSpeed ? "speed-only" : "nothing",
  };
}
