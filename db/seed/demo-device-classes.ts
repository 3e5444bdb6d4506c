import type { DeviceKind } from "@/lib/electrical/device-kind";

/** Classes that stand in the demo building, by the ids of `lib/electrical/device-classes`, and what such a device takes. */
export type DemoClass = {
  id: string;
  kind: DeviceKind;
  settings: readonly { name: string; powerW: number }[];
  hasThermostat: boolean;
  /** Real power over volts times amperes. */
  powerFactor: number;
};

const off = { name: "off", powerW: 0 };

export const FAN_HEATER: DemoClass = {
  id: "fan-heater-1500",
  kind: "space-heater",
  settings: [
    off,
    { name: "fan-only", powerW: 21 },
    { name: "low-heat", powerW: 790 },
    { name: "high-heat", powerW: 1400 },
  ],
  hasThermostat: true,
  powerFactor: 1,
};
export const COMPACT_HEATER: DemoClass = {
  id: "fan-heater-900",
  kind: "space-heater",
  settings: [off, { name: "low-heat", powerW: 480 }, { name: "high-heat", powerW: 870 }],
  hasThermostat: true,
  powerFactor: 1,
};
export const PERSONAL_HEATER: DemoClass = {
  id: "fan-heater-personal",
  kind: "space-heater",
  settings: [off, { name: "high-heat", powerW: 245 }],
  hasThermostat: false,
  powerFactor: 1,
};
export const OIL_RADIATOR: DemoClass = {
  id: "oil-radiator-1500",
  kind: "space-heater",
  settings: [
    off,
    { name: "low-heat", powerW: 610 },
    { name: "medium-heat", powerW: 890 },
    { name: "high-heat", powerW: 1460 },
  ],
  hasThermostat: true,
  powerFactor: 1,
};
export const RADIANT_PANEL: DemoClass = {
  id: "radiant-panel",
  kind: "space-heater",
  settings: [off, { name: "high-heat", powerW: 148 }],
  hasThermostat: false,
  powerFactor: 1,
};
export const SMALL_FAN: DemoClass = {
  id: "desk-fan-small",
  kind: "personal-fan",
  settings: [off, { name: "low-speed", powerW: 13 }, { name: "high-speed", powerW: 21 }],
  hasThermostat: false,
  powerFactor: 0.58,
};
export const DESK_FAN: DemoClass = {
  id: "desk-fan",
  kind: "personal-fan",
  settings: [off, { name: "low-speed", powerW: 23 }, { name: "high-speed", powerW: 34 }],
  hasThermostat: false,
  powerFactor: 0.75,
};
export const USB_FAN: DemoClass = {
  id: "usb-fan",
  kind: "personal-fan",
  settings: [off, { name: "low-speed", powerW: 1.5 }, { name: "high-speed", powerW: 2.8 }],
  hasThermostat: false,
  powerFactor: 0.5,
};
export const TOWER_FAN: DemoClass = {
  id: "tower-fan",
  kind: "personal-fan",
  settings: [
    { name: "off", powerW: 1 },
    { name: "low-speed", powerW: 31 },
    { name: "high-speed", powerW: 47 },
  ],
  hasThermostat: false,
  powerFactor: 0.9,
};
