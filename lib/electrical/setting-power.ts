import { triangularDeviation } from "@/lib/statistics/triangular";
import { powerFactorOf } from "./active-power";
import { clampPower } from "./clamp-power";
import { classSetting, type DeviceClass } from "./device-classes";
import { POWER_BASES, type PowerBasis, settingLabel, settingLoad } from "./device-kind";
import { COVERAGE_FACTOR, PLUG_METER_HALF_WIDTH_FRACTION, rectangularUncertainty } from "./measurement-uncertainty";
import { nameplateBandW } from "./nameplate-band";
import { nameplateComparison } from "./nameplate-comparison";
import { settingEntryFaults } from "./setting-limits";
import type {
  ElectricalFinding,
  PowerRefusalCode,
  SettingPower,
  SettingPowerOk,
  SettingPowerRefused,
  SettingReading,
} from "./setting-reading";
import { LARGEST_BRANCH_DROP, voltageUnderLoad } from "./voltage-under-load";

/**
 * Power of one setting in W with its range and uncertainty, from what is on record about it. Meter readings carry
 * a range of ± the expanded uncertainty (JCGM 100:2008); a nameplate the band that IEC 60335-1 accepts; a class
 * default the range of its class. Refuses, with the reason, instead of guessing.
 */
export function settingPower(reading: SettingReading, deviceClass: DeviceClass | null): SettingPower {
  const faults = Object.values(impossibleValues(reading));
  if (faults.length > 0) return refusal("impossible-entry", `${titleOf(reading)}: ${faults.join(" ")}`);
  const outcome = powerByBasis(reading, deviceClass);
  if (outcome.status === "refused") return outcome;
  const compared = nameplateComparison(outcome, reading, deviceClass) ?? classComparison(outcome, reading, deviceClass);
  return { ...outcome, findings: [...outcome.findings, ...compared, ...voltageDrop(reading), ...lessTrusted(reading)] };
}

function powerByBasis(reading: SettingReading, deviceClass: DeviceClass | null): SettingPower {
  switch (reading.basis) {
    case "clamp":
      return clampPower(reading, deviceClass);
    case "plug-meter":
      return plugMeterPower(reading);
    case "nameplate":
      return nameplatePower(reading);
    case "class-default":
      return classDefaultPower(reading, deviceClass);
  }
}

/** Both meters at one setting give the power factor, which a clamp alone cannot. */
function powerFactorRead({ powerW, currentA, voltageV }: SettingReading): ElectricalFinding[] {
  if (!powerW || !currentA || !voltageV) return [];
  const { powerFactor, apparentPowerVa } = powerFactorOf({ voltageV, currentA, powerW });
  if (powerFactor > 1) return [];
  return [{ code: "power-factor-read", severity: "note", evidence: { powerFactor, powerW, apparentPowerVa } }];
}

function plugMeterPower(reading: SettingReading): SettingPower {
  if (reading.powerW === null) {
    return refusal(
      "power-missing",
      `${titleOf(reading)}: the plug-in meter's watts are missing. Type what it showed, or choose another basis.`,
    );
  }
  const uncertaintyW = rectangularUncertainty(PLUG_METER_HALF_WIDTH_FRACTION * reading.powerW);
  const expandedW = COVERAGE_FACTOR * uncertaintyW;
  return {
    status: "ok",
    basis: "plug-meter",
    powerW: { value: reading.powerW, low: Math.max(0, reading.powerW - expandedW), high: reading.powerW + expandedW },
    standardUncertaintyW: uncertaintyW,
    expandedUncertaintyW: expandedW,
    isUpperBound: false,
    findings: powerFactorRead(reading),
  };
}

function nameplatePower(reading: SettingReading): SettingPower {
  const nameplateW = reading.nameplateW ?? null;
  if (nameplateW === null) {
    return refusal(
      "power-missing",
      `${titleOf(reading)}: the watts on the nameplate are missing. Read the label under the device, or choose the class default.`,
    );
  }
  const { lowW, highW } = nameplateBandW(nameplateW, settingLoad(reading.kind, reading.settingName));
  // A band that is not symmetric about the value: u = width/√12 (JCGM 100:2008, 4.3.8).
  const uncertaintyW = rectangularUncertainty((highW - lowW) / 2);
  return {
    status: "ok",
    basis: "nameplate",
    powerW: { value: nameplateW, low: lowW, high: highW },
    standardUncertaintyW: uncertaintyW,
    expandedUncertaintyW: COVERAGE_FACTOR * uncertaintyW,
    isUpperBound: false,
    findings: [{ code: "nameplate-not-measured", severity: "note", evidence: { powerW: nameplateW, lowW, highW } }],
  };
}

function classDefaultPower(reading: SettingReading, deviceClass: DeviceClass | null): SettingPower {
  if (!deviceClass) {
    return refusal(
      "class-unknown",
      `${titleOf(reading)}: the device's class is not known, so there is no default. Choose a class, or measure the setting.`,
    );
  }
  const typical = classSetting(deviceClass, reading.settingName);
  if (!typical) {
    const known = deviceClass.settings.map((each) => settingLabel(each.name)).join(", ");
    return refusal(
      "class-without-setting",
      `${titleOf(reading)}: a ${deviceClass.label} has no such setting (it has ${known}). Choose one of these, or measure the setting.`,
    );
  }
  const { powerW, lowW, highW } = typical;
  const findings: ElectricalFinding[] = [
    { code: "class-default-used", severity: "note", evidence: { className: deviceClass.label, powerW, lowW, highW } },
  ];
  if (reading.powerW !== null && reading.powerW !== powerW) {
    findings.push({
      code: "class-default-differs",
      severity: "caution",
      evidence: { enteredW: reading.powerW, powerW },
    });
  }
  const uncertaintyW = triangularDeviation({ low: lowW, mode: powerW, high: highW });
  return {
    status: "ok",
    basis: "class-default",
    powerW: { value: powerW, low: lowW, high: highW },
    standardUncertaintyW: uncertaintyW,
    expandedUncertaintyW: COVERAGE_FACTOR * uncertaintyW,
    isUpperBound: false,
    findings,
  };
}

/** A reading far from what its class draws points at the jaws round both wires, a ×10 loop or another setting. */
function classComparison(
  power: SettingPowerOk,
  reading: SettingReading,
  deviceClass: DeviceClass | null,
): ElectricalFinding[] {
  const typical = deviceClass && classSetting(deviceClass, reading.settingName);
  if (!typical || reading.settingName === "off" || power.basis === "class-default" || power.basis === "nameplate")
    return [];
  const evidence = { powerW: power.powerW.value, lowW: typical.lowW, highW: typical.highW };
  if (power.powerW.value < 0.2 * typical.lowW) {
    return [{ code: "reading-implausibly-low", severity: "caution", evidence }];
  }
  // V·I of a motor may be several times its power, so only a factor of five says anything there.
  if (power.powerW.value > (power.isUpperBound ? 5 : 2) * typical.highW) {
    return [{ code: "reading-implausibly-high", severity: "caution", evidence }];
  }
  return [];
}

/** A supply that gives way under the load: over 3 % on the branch is a matter for an electrician. */
function voltageDrop(reading: SettingReading): ElectricalFinding[] {
  const { openVoltageV, voltageV, currentA, voltageMeasured } = reading;
  if (!openVoltageV || !voltageV || !currentA || !voltageMeasured) return [];
  const { dropFraction, loopImpedanceOhm } = voltageUnderLoad({ openVoltageV, loadVoltageV: voltageV, currentA });
  if (dropFraction <= LARGEST_BRANCH_DROP) return [];
  return [
    {
      code: "voltage-drop",
      severity: "caution",
      evidence: { dropPct: 100 * dropFraction, loopImpedanceOhm, currentA },
    },
  ];
}

/** Something surer is on record than what the figure is taken from. */
function lessTrusted(reading: SettingReading): ElectricalFinding[] {
  // A class default beside watts has its own finding.
  if (reading.basis === "class-default" && reading.powerW !== null) return [];
  const onRecord = surestBasis(reading);
  if (POWER_BASES.indexOf(onRecord) >= POWER_BASES.indexOf(reading.basis)) return [];
  return [{ code: "less-trusted-basis", severity: "caution", evidence: { basis: reading.basis, onRecord } }];
}

/** The surest basis that has its reading on record, in the order of trust. */
export function surestBasis(reading: SettingReading): PowerBasis {
  if (reading.powerW !== null) return "plug-meter";
  if (reading.currentA !== null) return "clamp";
  return (reading.nameplateW ?? null) !== null ? "nameplate" : "class-default";
}

/** Values that no setting can have; a missing one is for the basis to judge. */
function impossibleValues({ basis: _, ...values }: SettingReading): Partial<Record<string, string>> {
  return settingEntryFaults({ basis: "class-default", ...values });
}

const refusal = (code: PowerRefusalCode, message: string): SettingPowerRefused => ({
  status: "refused",
  code,
  message,
});

const titleOf = (reading: SettingReading): string => `Setting "${settingLabel(reading.settingName)}"`;
