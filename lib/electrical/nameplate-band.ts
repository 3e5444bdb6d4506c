import { elementPowerAtVoltageW } from "./active-power";
import type { SettingLoad } from "./device-kind";

/**
 * Power that an appliance may take at its rated voltage when the nameplate says `nameplateW` (IEC 60335-1:2010,
 * clause 10.1, table 1, from memory). Heating appliances: over 200 W -10 % and +5 % or +20 W, whichever is more;
 * over 25 W ±10 %. Motors and anything up to 25 W: +20 %. The standard gives no lower limit for those; half the
 * rating for motors and 20 % less for small heating appliances are judgement.
 */
export function nameplateBandW(nameplateW: number, load: SettingLoad): { lowW: number; highW: number } {
  if (load === "motor") return { lowW: 0.5 * nameplateW, highW: 1.2 * nameplateW };
  if (nameplateW <= 25) return { lowW: 0.8 * nameplateW, highW: 1.2 * nameplateW };
  if (nameplateW <= 200) return { lowW: 0.9 * nameplateW, highW: 1.1 * nameplateW };
  return { lowW: 0.9 * nameplateW, highW: Math.max(1.05 * nameplateW, nameplateW + 20) };
}

/** A heater's reading held against its nameplate at the voltage it was read at; plausible within 0.90 to 1.05 of it. */
export function compareWithNameplate(reading: {
  measuredW: number;
  voltageV: number;
  nameplateW: number;
  nameplateV: number;
}): { expectedW: number; ratio: number; plausible: boolean } {
  const expectedW = elementPowerAtVoltageW({
    powerW: reading.nameplateW,
    voltageV: reading.nameplateV,
    newVoltageV: reading.voltageV,
  });
  const ratio = reading.measuredW / expectedW;
  return { expectedW, ratio, plausible: ratio >= 0.9 && ratio <= 1.05 };
}
