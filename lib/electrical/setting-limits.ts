import type { PowerBasis } from "./device-kind";
import { METER_LIMITS, USE_LIMITS, withinFault } from "./entry-range";

/** One setting as a person typed it; null for an empty field, NaN for something that is not a number. */
export type SettingEntry = {
  basis: PowerBasis;
  currentA?: number | null;
  currentResolutionA?: number | null;
  voltageV?: number | null;
  powerFactor?: number | null;
  powerW?: number | null;
  nameplateW?: number | null;
  clampTurns?: number | null;
  meterAccuracyPct?: number | null;
  meterAccuracyCounts?: number | null;
  openVoltageV?: number | null;
  hoursPerDay?: number | null;
  daysPerYear?: number | null;
  hoursPerYear?: number | null;
  dutyFraction?: number | null;
  pricePerKwh?: number | null;
};

export type SettingField = Exclude<keyof SettingEntry, "basis">;

/** Most that a plug-in device on one outlet can be asked about. Common practice, no source: house limits. */
export const SETTING_LIMITS = {
  currentA: 60,
  currentResolutionA: 1,
  lowestVoltageV: 90,
  highestVoltageV: 260,
  powerW: 5000,
  hoursPerYear: 8784,
} as const;

/** A sentence per field that cannot be right; an empty object when all can. All faults are reported together. */
export function settingEntryFaults(entry: SettingEntry): Partial<Record<SettingField, string>> {
  const faults: Partial<Record<SettingField, string>> = {};
  const note = (field: SettingField, fault: string | null): void => {
    if (fault) faults[field] = fault;
  };
  note("currentA", currentFault(entry));
  note("currentResolutionA", resolutionFault(entry.currentResolutionA));
  note("voltageV", voltageFault(entry.voltageV));
  note("powerFactor", powerFactorFault(entry.powerFactor));
  note("powerW", powerFault(entry));
  note("nameplateW", nameplateFault(entry));
  note("clampTurns", turnsFault(entry.clampTurns));
  note("meterAccuracyPct", withinFault(entry.meterAccuracyPct, METER_LIMITS.accuracyPct));
  note("meterAccuracyCounts", withinFault(entry.meterAccuracyCounts, METER_LIMITS.accuracyCounts));
  note("openVoltageV", voltageFault(entry.openVoltageV));
  note("hoursPerDay", withinFault(entry.hoursPerDay, USE_LIMITS.hoursPerDay));
  note("daysPerYear", withinFault(entry.daysPerYear, USE_LIMITS.daysPerYear));
  note("hoursPerYear", hoursFault(entry.hoursPerYear));
  note("dutyFraction", dutyFault(entry.dutyFraction));
  note("pricePerKwh", priceFault(entry.pricePerKwh));
  return faults;
}

const isGiven = (value: number | null | undefined): value is number => value !== null && value !== undefined;
const notANumber = (what: string, example: string): string =>
  `${what} is not a number. Type digits only, for example ${example}.`;

function currentFault({ basis, currentA, voltageV }: SettingEntry): string | null {
  if (!isGiven(currentA)) {
    return basis === "clamp" ? "Type the current that the clamp meter showed, in A, or choose another basis." : null;
  }
  if (!Number.isFinite(currentA)) return notANumber("The current", "12.1");
  if (currentA < 0)
    return `A current cannot be negative; ${currentA} A was typed. Type what the meter showed, without a sign.`;
  if (currentA > SETTING_LIMITS.currentA) {
    return `${currentA} A is more than any outlet carries; was this watts, or ${shiftedCurrent(currentA)} A?`;
  }
  if (isGiven(voltageV) && currentA * voltageV > SETTING_LIMITS.powerW) {
    return `${currentA} A at ${voltageV} V is ${Math.round(currentA * voltageV)} W, more than a portable device takes (${SETTING_LIMITS.powerW} W). Check both readings.`;
  }
  return null;
}

/** The same digits with the decimal point where a plug could carry the current: 1500 becomes 15.00. */
function shiftedCurrent(currentA: number): string {
  let decimals = 1;
  while (currentA / 10 ** decimals > 16) decimals += 1;
  return (currentA / 10 ** decimals).toFixed(decimals);
}

function resolutionFault(resolutionA: number | null | undefined): string | null {
  if (!isGiven(resolutionA)) return null;
  if (!Number.isFinite(resolutionA)) return notANumber("The display resolution", "0.01");
  if (resolutionA > 0 && resolutionA <= SETTING_LIMITS.currentResolutionA) return null;
  return `The display resolution is the step of the meter's last digit, such as 0.1 or 0.01 A; ${resolutionA} was typed.`;
}

function voltageFault(voltageV: number | null | undefined): string | null {
  if (!isGiven(voltageV)) return null;
  if (!Number.isFinite(voltageV)) return notANumber("The voltage", "120");
  if (voltageV >= SETTING_LIMITS.lowestVoltageV && voltageV <= SETTING_LIMITS.highestVoltageV) return null;
  return `The voltage of an outlet lies between ${SETTING_LIMITS.lowestVoltageV} and ${SETTING_LIMITS.highestVoltageV} V; ${voltageV} V was typed. Type the reading, or the nominal voltage of the outlet.`;
}

function powerFactorFault(powerFactor: number | null | undefined): string | null {
  if (!isGiven(powerFactor)) return null;
  if (!Number.isFinite(powerFactor)) return notANumber("The power factor", "0.95");
  if (powerFactor > 0 && powerFactor <= 1) return null;
  const asPercent = powerFactor > 1 && powerFactor <= 100 ? ` For ${powerFactor} % type ${powerFactor / 100}.` : "";
  return `A power factor is above 0 and at most 1; ${powerFactor} was typed.${asPercent}`;
}

function powerFault({ basis, powerW }: SettingEntry): string | null {
  if (!isGiven(powerW)) {
    return basis === "plug-meter"
      ? "Type the power that the plug-in meter showed, in W, or choose another basis."
      : null;
  }
  if (!Number.isFinite(powerW)) return notANumber("The power", "1500");
  if (powerW < 0) return `A power cannot be negative; ${powerW} W was typed.`;
  if (powerW <= SETTING_LIMITS.powerW) return null;
  return `${powerW} W is more than a portable heater or fan takes (${SETTING_LIMITS.powerW} W). Type watts, with a point for decimals.`;
}

function nameplateFault({ basis, nameplateW, powerW }: SettingEntry): string | null {
  if (isGiven(nameplateW)) return powerFault({ basis: "class-default", powerW: nameplateW });
  return basis === "nameplate" && !isGiven(powerW)
    ? "Type the power printed on the nameplate, in W, or choose another basis."
    : null;
}

function turnsFault(turns: number | null | undefined): string | null {
  if (!isGiven(turns) || turns === 1 || turns === 10) return null;
  return `The conductor passes the jaws once, or ten times in the loop of a line splitter; ${turns} was given. Choose 1 or 10.`;
}

function hoursFault(hoursPerYear: number | null | undefined): string | null {
  if (!isGiven(hoursPerYear)) return null;
  if (!Number.isFinite(hoursPerYear)) return notANumber("The hours a year", "220");
  if (hoursPerYear < 0) return `Hours a year cannot be negative; ${hoursPerYear} was typed.`;
  if (hoursPerYear <= SETTING_LIMITS.hoursPerYear) return null;
  return `A year has 8760 hours (8784 in a leap year); ${hoursPerYear} was typed. Type hours a year, not minutes.`;
}

function dutyFault(dutyFraction: number | null | undefined): string | null {
  if (!isGiven(dutyFraction)) return null;
  if (!Number.isFinite(dutyFraction)) return notANumber("The duty cycle", "0.6");
  if (dutyFraction >= 0 && dutyFraction <= 1) return null;
  if (dutyFraction > 1 && dutyFraction <= 100) {
    return `The duty cycle is a share between 0 and 1; ${dutyFraction} was typed. For ${dutyFraction} % type ${dutyFraction / 100}.`;
  }
  return `The duty cycle is a share between 0 and 1; ${dutyFraction} was typed.`;
}

function priceFault(pricePerKwh: number | null | undefined): string | null {
  if (!isGiven(pricePerKwh)) return null;
  if (!Number.isFinite(pricePerKwh)) return notANumber("The price of a kWh", "0.13");
  return pricePerKwh >= 0 ? null : `A price per kWh cannot be negative; ${pricePerKwh} was typed.`;
}
