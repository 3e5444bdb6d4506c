import { elementCurrentAtVoltageA } from "../active-power";
import { type DeviceClass, topSetting } from "../device-classes";
import { type DeviceKind, type PowerBasis, settingLoad } from "../device-kind";

/** A setting as far as a circuit is concerned. */
export type LoadSetting = {
  name: string;
  basis: PowerBasis;
  currentA: number | null;
  voltageV: number | null;
  voltageMeasured: boolean;
  powerFactor: number | null;
  powerW: number | null;
  nameplateW: number | null;
};

export type LoadDevice = {
  kind: DeviceKind;
  deviceClass: DeviceClass | null;
  nameplateW: number | null;
  nameplateA: number | null;
  nameplateVoltageV: number | null;
  settings: readonly LoadSetting[];
};

export type LoadBasis = "measured" | "nameplate" | "class-default";

export type DeviceLoad =
  | {
      status: "ok";
      /** Current of its highest setting at the circuit's voltage [A]. */
      currentA: number;
      basis: LoadBasis;
      /** As its label says, for the shares that go by it; null when no label was read. */
      nameplateA: number | null;
      /** A reading at the highest setting was left aside, because it is next to nothing beside the label. */
      readingNotTrusted: boolean;
    }
  | { status: "unknown" };

/** A reading of less than this share of the label cannot be the load of the highest setting: both conductors, or a thermostat. */
const LEAST_CREDIBLE_SHARE = 0.5;

/**
 * Current of a device at its highest setting, not at the one seen: measured there, else its nameplate, else the high end of its
 * class. A heating element's reading taken below the nominal voltage is scaled up to it, never down.
 */
export function deviceLoad(device: LoadDevice, nominalVoltageV: number): DeviceLoad {
  const nameplateA = ratedCurrentA(device, nominalVoltageV);
  const measuredA = measuredAtTop(device, nominalVoltageV);
  const credible = measuredA !== null && (nameplateA === null || measuredA >= LEAST_CREDIBLE_SHARE * nameplateA);
  if (measuredA !== null && credible)
    return { status: "ok", currentA: measuredA, basis: "measured", nameplateA, readingNotTrusted: false };
  const readingNotTrusted = measuredA !== null;
  if (nameplateA !== null)
    return { status: "ok", currentA: nameplateA, basis: "nameplate", nameplateA, readingNotTrusted };
  const defaultA = device.deviceClass && classHighA(device.deviceClass, nominalVoltageV);
  return defaultA === null
    ? { status: "unknown" }
    : { status: "ok", currentA: defaultA, basis: "class-default", nameplateA: null, readingNotTrusted };
}

/** Highest measured current, if the highest setting of the class is among those that were measured. */
function measuredAtTop(device: LoadDevice, nominalVoltageV: number): number | null {
  const measured = device.settings.flatMap((setting) => {
    const currentA = settingCurrentA(setting, device, nominalVoltageV);
    return currentA === null ? [] : { name: setting.name, currentA };
  });
  const top = device.deviceClass ? topSetting(device.deviceClass).name : null;
  const hasTop = measured.some(({ name }) => top === null || name === top);
  return hasTop ? Math.max(...measured.map(({ currentA }) => currentA)) : null;
}

/** Current of a measured setting at the nominal voltage; null when nothing was measured. */
function settingCurrentA(setting: LoadSetting, device: LoadDevice, nominalVoltageV: number): number | null {
  const element = settingLoad(device.kind, setting.name) === "element";
  const readV = setting.voltageV ?? device.deviceClass?.nominalVoltageV ?? nominalVoltageV;
  const scaled = (currentA: number): number =>
    element && setting.voltageMeasured && readV < nominalVoltageV
      ? elementCurrentAtVoltageA({ currentA, voltageV: readV, newVoltageV: nominalVoltageV })
      : currentA;
  if (setting.basis === "clamp" && setting.currentA !== null) return scaled(setting.currentA);
  if (setting.basis !== "plug-meter" || setting.powerW === null) return null;
  const powerFactor = element ? 1 : (setting.powerFactor ?? device.deviceClass?.powerFactor.low ?? 1);
  return scaled(setting.powerW / (readV * powerFactor));
}

/** Current off the label: as printed, or watts over volts; an element's follows the circuit's voltage. */
export function ratedCurrentA(device: LoadDevice, nominalVoltageV: number): number | null {
  const ratedV = device.nameplateVoltageV ?? device.deviceClass?.nominalVoltageV ?? nominalVoltageV;
  const wattsOfSettings = device.settings.flatMap(({ nameplateW }) => nameplateW ?? []);
  const ratedW = device.nameplateW ?? (wattsOfSettings.length > 0 ? Math.max(...wattsOfSettings) : null);
  const isElement = device.kind === "space-heater";
  const printedA = device.nameplateA ?? (ratedW === null ? null : ratedW / (ratedV * factorOf(device)));
  if (printedA === null) return null;
  return isElement
    ? elementCurrentAtVoltageA({ currentA: printedA, voltageV: ratedV, newVoltageV: nominalVoltageV })
    : printedA;
}

const factorOf = (device: LoadDevice): number =>
  device.kind === "personal-fan" ? (device.deviceClass?.powerFactor.low ?? 1) : 1;

function classHighA(deviceClass: DeviceClass, nominalVoltageV: number): number {
  const powerFactor = deviceClass.kind === "personal-fan" ? deviceClass.powerFactor.low : 1;
  return Math.max(...deviceClass.settings.map(({ highW }) => highW)) / (nominalVoltageV * powerFactor);
}
