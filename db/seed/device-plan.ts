import type { PowerBasis } from "@/lib/electrical/device-kind";
import type { RandomSource } from "@/lib/statistics/random";
import {
  COMPACT_HEATER,
  DESK_FAN,
  type DemoClass,
  FAN_HEATER,
  OIL_RADIATOR,
  PERSONAL_HEATER,
  RADIANT_PANEL,
  SMALL_FAN,
  TOWER_FAN,
  USB_FAN,
} from "./demo-device-classes";
import { normal, pick, streamOf } from "./normal";
import type { DemoCause } from "./planted-causes";
import { ZONE_PLANS, type ZonePlan } from "./zone-plan";

/** A heater or fan of the demo building: where it stands, what it is and how it was measured. */
export type DevicePlan = {
  label: string;
  zoneCode: string;
  /** Index of its desk in the zone. */
  desk: number;
  deviceClass: DemoClass;
  /** This device against its class, from its making. */
  powerFactorOfMake: number;
  /** Setting that its owner uses, and the share of that time in which the thermostat lets it run. */
  usedSetting: string;
  dutyFraction: number;
  /** Air at the desk below which the owner of a heater wants it, and the share of days on which they think of it. */
  onBelowC: number;
  shareOfDays: number;
  basis: PowerBasis;
  /** Voltage at the outlet; null when nobody read it. */
  readVoltageV: number | null;
  currentResolutionA: number;
  foundOn: string;
  retiredOn: string | null;
  note: string;
};

const HEATERS_BY_CAUSE: Record<DemoCause, number> = {
  healthy: 0,
  "setpoint-too-low": 2,
  "minimum-airflow-too-high": 2,
  "reheat-fighting": 1,
  "biased-sensor": 2,
  "override-left-in": 2,
  "cold-desk": 1,
  "too-little-airflow": 0,
  "heater-at-thermostat": 2,
  "packaged-unit-overshoots": 2,
};
const FANS_BY_CAUSE: Partial<Record<DemoCause, number>> = { "too-little-airflow": 5, healthy: 1 };
/** Sound zones with somebody who feels the cold all the same. */
const HEATERS_IN_SOUND_ZONES = ["1-08", "3-02"];
const FANS_ELSEWHERE = ["1-03", "2-08", "1-07"];
/** Devices that had left the building by the end of the year. */
const RETIRED: readonly { zoneCode: string; deviceClass: DemoClass; retiredOn: string; note: string }[] = [
  { zoneCode: "1-06", deviceClass: FAN_HEATER, retiredOn: "2026-02-20", note: "Scorched plug; taken out of use." },
  { zoneCode: "2-05", deviceClass: FAN_HEATER, retiredOn: "2026-05-04", note: "Owner moved to another floor." },
  { zoneCode: "3-11", deviceClass: OIL_RADIATOR, retiredOn: "2026-03-27", note: "Handed back after the desk move." },
  { zoneCode: "3-06", deviceClass: SMALL_FAN, retiredOn: "2026-06-30", note: "Motor hummed; replaced." },
];

const HEATER_CLASSES: readonly [DemoClass, ...DemoClass[]] = [
  FAN_HEATER,
  FAN_HEATER,
  FAN_HEATER,
  FAN_HEATER,
  FAN_HEATER,
  COMPACT_HEATER,
  COMPACT_HEATER,
  PERSONAL_HEATER,
  OIL_RADIATOR,
  RADIANT_PANEL,
];
const FAN_CLASSES: readonly [DemoClass, ...DemoClass[]] = [SMALL_FAN, SMALL_FAN, DESK_FAN, USB_FAN, TOWER_FAN];
const HEATER_BASES: readonly [PowerBasis, ...PowerBasis[]] = ["clamp", "clamp", "clamp", "plug-meter", "class-default"];
const FAN_BASES: readonly [PowerBasis, ...PowerBasis[]] = [
  "plug-meter",
  "plug-meter",
  "class-default",
  "class-default",
  "clamp",
];
const WALKS: readonly [string, ...string[]] = ["2025-10-14", "2025-10-15", "2025-10-15", "2026-01-20"];

/** Every device of a made building, the demo's unless other zones are given, in the order of its label. */
export function devicePlans(zones: readonly ZonePlan[] = ZONE_PLANS, labelled = ""): DevicePlan[] {
  const placed: { zone: ZonePlan; desk: number; kind: "heater" | "fan"; retired?: (typeof RETIRED)[number] }[] = [];
  for (const zone of zones) {
    const heaters = HEATERS_BY_CAUSE[zone.cause] + (HEATERS_IN_SOUND_ZONES.includes(zone.code) ? 1 : 0);
    for (let h = 0; h < heaters; h++) placed.push({ zone, desk: zone.coldDesk?.desk ?? h * 3, kind: "heater" });
  }
  for (const zone of zones) {
    const fans = (FANS_BY_CAUSE[zone.cause] ?? 0) + (FANS_ELSEWHERE.includes(zone.code) ? 1 : 0);
    for (let f = 0; f < fans; f++) placed.push({ zone, desk: zone.deskCount - 1 - f, kind: "fan" });
  }
  for (const retired of RETIRED) {
    const zone = zones.find((each) => each.code === retired.zoneCode);
    if (!zone) continue;
    placed.push({ zone, desk: 1, kind: retired.deviceClass.kind === "space-heater" ? "heater" : "fan", retired });
  }
  const numbers = { heater: 0, fan: 0 };
  return placed.map(({ zone, desk, kind, retired }) => {
    numbers[kind]++;
    const label = `${labelled}${kind === "heater" ? "H" : "F"}-${String(numbers[kind]).padStart(3, "0")}`;
    return { ...drawDevice(label, zone, kind, retired?.deviceClass), desk, ...retiredFields(retired) };
  });
}

function retiredFields(retired: (typeof RETIRED)[number] | undefined): Pick<DevicePlan, "retiredOn" | "note"> {
  return { retiredOn: retired?.retiredOn ?? null, note: retired?.note ?? "" };
}

function drawDevice(
  label: string,
  zone: ZonePlan,
  kind: "heater" | "fan",
  given: DemoClass | undefined,
): Omit<DevicePlan, "desk" | "retiredOn" | "note"> {
  const random = streamOf(`device/${label}`);
  const deviceClass = given ?? pick(random, kind === "heater" ? HEATER_CLASSES : FAN_CLASSES);
  const basis = pick(random, kind === "heater" ? HEATER_BASES : FAN_BASES);
  return {
    label,
    zoneCode: zone.code,
    deviceClass,
    powerFactorOfMake: 1 + 0.05 * normal(random),
    usedSetting: usedSetting(deviceClass, random),
    dutyFraction: deviceClass.hasThermostat ? 0.5 + 0.05 * Math.round(9 * random()) : 1,
    onBelowC: wantsHeatBelow(zone) + 0.35 * normal(random),
    shareOfDays: 0.35 + 0.5 * random(),
    basis: deviceClass.settings.every((each) => each.powerW < 5) ? "class-default" : basis,
    readVoltageV: random() < 0.75 ? Math.round(1200 + 18 * normal(random)) / 10 : null,
    currentResolutionA: kind === "heater" && random() < 0.4 ? 0.1 : 0.01,
    foundOn: pick(random, WALKS),
  };
}

/** Owners of a heater in a sound zone want it warmer than others; those at a draughty desk feel the draught, not the zone. */
function wantsHeatBelow(zone: ZonePlan): number {
  if (zone.cause === "heater-at-thermostat") return 24;
  return zone.cause === "healthy" ? 23.2 : 21.9;
}

function usedSetting(deviceClass: DemoClass, random: RandomSource): string {
  const running = deviceClass.settings.filter((each) => each.name !== "off" && each.name !== "fan-only");
  return running[Math.floor(random() * running.length)]?.name ?? "off";
}

/** Watts that a device takes in one of its settings, at 120 V. */
export function settingPowerW(device: DevicePlan, name: string): number {
  const setting = device.deviceClass.settings.find((each) => each.name === name);
  return (setting?.powerW ?? 0) * device.powerFactorOfMake;
}
