import { activePowerW } from "./active-power";
import type { DeviceClass } from "./device-classes";
import { type SettingLoad, settingLabel, settingLoad } from "./device-kind";
import {
  COVERAGE_FACTOR,
  clampHalfWidthA,
  POWER_FACTOR_HALF_WIDTH,
  productUncertaintyW,
  rectangularUncertainty,
  voltageHalfWidthV,
} from "./measurement-uncertainty";
import { phaseControlled } from "./phase-control";
import type { ElectricalFinding, SettingPower, SettingReading } from "./setting-reading";
import type { ValueRange } from "./value-range";

/** Below this a clamp meter with a display of 0.1 A says next to nothing. */
export const LOWEST_COARSE_READING_A = 1;

/** Power factor of a small motor whose class says nothing: shaded-pole desk fan (judgement). */
export const USUAL_MOTOR_POWER_FACTOR: ValueRange = { value: 0.6, low: 0.3, high: 0.95 };

/** The values behind a clamp figure, each taken from the reading or, where it is silent, from the class. */
export type ClampInputs = {
  currentA: number;
  resolutionA: number;
  voltageV: number;
  voltageMeasured: boolean;
  powerFactor: number;
  load: SettingLoad;
  powerFactorKnown: boolean;
  turns: number;
  accuracyPct: number | null;
  accuracyCounts: number | null;
};

/**
 * Power from a clamp meter's current, P = V·I·PF. A heating element counts with a power factor of 1 when none is
 * given. A motor without one gets V·I, an upper bound, and a range that reaches down to the lowest power factor
 * of its kind. Below 1 A on a display of 0.1 A or coarser the reading is refused.
 */
export function clampPower(reading: SettingReading, deviceClass: DeviceClass | null): SettingPower {
  const setting = `Setting "${settingLabel(reading.settingName)}"`;
  if (reading.currentA === null) {
    return {
      status: "refused",
      code: "current-missing",
      message: `${setting}: the clamp meter's current is missing. Type what it showed, or choose another basis.`,
    };
  }
  const voltageV = reading.voltageV ?? deviceClass?.nominalVoltageV ?? null;
  if (voltageV === null) {
    return {
      status: "refused",
      code: "voltage-missing",
      message: `${setting}: the voltage is missing. Read it at the outlet with the device running, or type the nominal voltage.`,
    };
  }
  const { currentA } = reading;
  const inputs = clampInputs(reading, currentA, voltageV);
  if (isBelowMeter(currentA * inputs.turns, reading.currentResolutionA)) {
    return {
      status: "refused",
      code: "current-below-meter",
      message: `${setting}: ${round3(currentA * inputs.turns)} A on a display of ${reading.currentResolutionA} A can be off by ${round2(inputs.turns * clampHalfWidthA(inputs))} A. Read this setting with a plug-in energy meter and type its watts, or use the class default.`,
    };
  }

  const powerW = activePowerW(inputs);
  const uncertaintyW = clampUncertaintyW(inputs);
  const expandedW = COVERAGE_FACTOR * uncertaintyW;
  const isUpperBound = !inputs.powerFactorKnown && inputs.load === "motor";
  const usual = motorPowerFactor(deviceClass);
  const lowFactor = isUpperBound ? usual.low : 1;
  return {
    status: "ok",
    basis: "clamp",
    powerW: { value: powerW, low: Math.max(0, lowFactor * (powerW - expandedW)), high: powerW + expandedW },
    standardUncertaintyW: uncertaintyW,
    expandedUncertaintyW: expandedW,
    isUpperBound,
    findings: clampFindings(reading, inputs, { powerW, isUpperBound, usual }),
  };
}

/** What goes into V·I·PF: a power factor of 1 where none is known. */
export function clampInputs(reading: SettingReading, currentA: number, voltageV: number): ClampInputs {
  return {
    currentA,
    resolutionA: reading.currentResolutionA ?? resolutionFromDigits(currentA),
    voltageV,
    voltageMeasured: reading.voltageMeasured && reading.voltageV !== null,
    powerFactor: reading.powerFactor ?? 1,
    load: settingLoad(reading.kind, reading.settingName),
    powerFactorKnown: reading.powerFactor !== null,
    turns: reading.clampTurns ?? 1,
    accuracyPct: reading.meterAccuracyPct ?? null,
    accuracyCounts: reading.meterAccuracyCounts ?? null,
  };
}

/** For an upper bound the power factor is exactly 1 and only the meter and the voltage are uncertain. */
function clampUncertaintyW(inputs: ClampInputs): number {
  const factorIsBound = !inputs.powerFactorKnown && inputs.load === "motor";
  return productUncertaintyW({
    voltageV: inputs.voltageV,
    voltageUncertaintyV: rectangularUncertainty(
      voltageHalfWidthV({ voltageV: inputs.voltageV, measured: inputs.voltageMeasured }),
    ),
    currentA: inputs.currentA,
    currentUncertaintyA: rectangularUncertainty(clampHalfWidthA(inputs)),
    powerFactor: inputs.powerFactor,
    powerFactorUncertainty: factorIsBound ? 0 : rectangularUncertainty(POWER_FACTOR_HALF_WIDTH[inputs.load]),
  });
}

function clampFindings(
  reading: SettingReading,
  inputs: ClampInputs,
  { powerW, isUpperBound, usual }: { powerW: number; isUpperBound: boolean; usual: ValueRange },
): ElectricalFinding[] {
  const findings: ElectricalFinding[] = [];
  if (isUpperBound) {
    findings.push({
      code: "power-factor-unknown",
      severity: "caution",
      evidence: { powerW, usualPowerFactor: usual.value, likelyW: powerW * usual.value },
    });
  }
  if (reading.isTrueRms === false) {
    const { errorFraction } = phaseControlled({ firingAngleDeg: 90, peakA: 1 });
    findings.push({ code: "not-true-rms", severity: "caution", evidence: { lowPct: -100 * errorFraction } });
  }
  if (inputs.currentA * inputs.turns < LOWEST_COARSE_READING_A) {
    findings.push({
      code: "small-current",
      severity: "caution",
      evidence: { currentA: inputs.currentA, halfWidthA: clampHalfWidthA(inputs) },
    });
  }
  if (reading.currentResolutionA === null) {
    findings.push({ code: "resolution-unknown", severity: "note", evidence: { resolutionA: inputs.resolutionA } });
  }
  if (inputs.currentA > 20) {
    findings.push({ code: "current-above-plug", severity: "caution", evidence: { currentA: inputs.currentA } });
  }
  if (reading.voltageV === null) {
    findings.push({ code: "voltage-from-class", severity: "note", evidence: { voltageV: inputs.voltageV } });
  } else if (!inputs.voltageMeasured) {
    findings.push({
      code: "voltage-not-measured",
      severity: "note",
      evidence: {
        voltageV: inputs.voltageV,
        halfWidthV: voltageHalfWidthV({ voltageV: inputs.voltageV, measured: false }),
      },
    });
  }
  return findings;
}

export function motorPowerFactor(deviceClass: DeviceClass | null): ValueRange {
  return deviceClass?.kind === "personal-fan" ? deviceClass.powerFactor : USUAL_MOTOR_POWER_FACTOR;
}

const isBelowMeter = (currentA: number, resolutionA: number | null): boolean =>
  resolutionA !== null && resolutionA >= 0.1 - 1e-9 && currentA < LOWEST_COARSE_READING_A;

/** 0.24 A cannot come from a display of 0.1 A; 9 A can, and is then taken to. */
const resolutionFromDigits = (currentA: number): number =>
  Math.abs(currentA * 10 - Math.round(currentA * 10)) < 1e-9 ? 0.1 : 0.01;

const round3 = (value: number): number => Number(value.toFixed(3));
const round2 = (value: number): number => Number(value.toFixed(2));
