import { settingLoad } from "@/lib/electrical/device-kind";
import type { deviceSetting } from "../schema/device";
import { type DevicePlan, settingPowerW } from "./device-plan";

export type SettingRow = Omit<typeof deviceSetting.$inferInsert, "deviceId">;

const HOURS_IN_YEAR = 8760;
/** Share of a heater's hours at the setting that its owner prefers; the other steps share the rest. */
const PREFERRED_SHARE = 0.85;
const FAN_ONLY_HOURS = 20;
/** A clamp meter with a display of 0.1 A says nothing below this, so nobody wrote it down. */
const LEAST_COARSE_CURRENT_A = 1;

/** The measurement sheet of a device: every setting with what was read and the hours its owner told of. */
export function deviceSettings(device: DevicePlan, hoursInUse: number): SettingRow[] {
  const hours = hoursBySetting(device, hoursInUse);
  return device.deviceClass.settings.map(({ name }, position) => ({
    position,
    name,
    ...reading(device, name),
    hoursPerYear: hours.get(name) ?? 0,
    dutyFraction: settingLoad(device.deviceClass.kind, name) === "element" ? device.dutyFraction : 1,
  }));
}

/** Hours by setting, to the nearest ten as people tell them; the rest of the year is off. */
function hoursBySetting(device: DevicePlan, hoursInUse: number): Map<string, number> {
  const names = device.deviceClass.settings.map(({ name }) => name);
  const running = names.filter((name) => name !== "off" && name !== "fan-only");
  const others = running.filter((name) => name !== device.usedSetting);
  const hours = new Map<string, number>();
  const tens = (exact: number) => 10 * Math.round(exact / 10);
  hours.set(device.usedSetting, tens(hoursInUse * (others.length > 0 ? PREFERRED_SHARE : 1)));
  for (const name of others) hours.set(name, tens((hoursInUse * (1 - PREFERRED_SHARE)) / others.length));
  if (names.includes("fan-only")) hours.set("fan-only", FAN_ONLY_HOURS);
  const used = [...hours.values()].reduce((sum, each) => sum + each, 0);
  return hours.set("off", HOURS_IN_YEAR - used);
}

type Reading = Pick<
  SettingRow,
  | "basis"
  | "rawReadingA"
  | "currentA"
  | "currentResolutionA"
  | "voltageV"
  | "voltageMeasured"
  | "powerFactor"
  | "powerW"
>;

const UNREAD: Reading = {
  basis: "class-default",
  rawReadingA: null,
  currentA: null,
  currentResolutionA: null,
  voltageV: null,
  voltageMeasured: false,
  powerFactor: null,
  powerW: null,
};

function reading(device: DevicePlan, name: string): Reading {
  const voltageV = device.readVoltageV ?? 120;
  const atNominalW = settingPowerW(device, name);
  if (device.basis === "class-default" || name === "off" || atNominalW === 0) return UNREAD;
  const element = settingLoad(device.deviceClass.kind, name) === "element";
  const powerW = element ? atNominalW * (voltageV / 120) ** 2 : atNominalW;
  const measured = { ...UNREAD, voltageV, voltageMeasured: device.readVoltageV !== null };
  if (device.basis === "plug-meter") return { ...measured, basis: "plug-meter", powerW: Math.round(powerW * 10) / 10 };
  const currentA = powerW / voltageV / (element ? 1 : motorPowerFactor(device));
  const coarse = device.currentResolutionA >= 0.1;
  if (coarse && currentA < LEAST_COARSE_CURRENT_A) return UNREAD;
  const shownA = Number(currentA.toFixed(coarse ? 1 : 2));
  return {
    ...measured,
    basis: "clamp",
    rawReadingA: shownA,
    currentA: shownA,
    currentResolutionA: device.currentResolutionA,
  };
}

/** Power factor of the motor: the class's for a fan, 0.75 for the blower of a heater (judgement). */
function motorPowerFactor({ deviceClass }: DevicePlan): number {
  return deviceClass.kind === "personal-fan" ? deviceClass.powerFactor : 0.75;
}
