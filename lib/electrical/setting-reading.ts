import type { Finding } from "@/lib/findings/finding";
import type { DeviceKind, PowerBasis } from "./device-kind";
import type { ElectricalFindingCode } from "./findings";
import type { ValueRange } from "./value-range";

/** What is on record about one setting of a device, as its measurement sheet holds it. */
export type SettingReading = {
  kind: DeviceKind;
  settingName: string;
  basis: PowerBasis;
  currentA: number | null;
  currentResolutionA: number | null;
  voltageV: number | null;
  voltageMeasured: boolean;
  powerFactor: number | null;
  /** Watts read by a plug-in meter. */
  powerW: number | null;
  /** Watts that the nameplate gives for this setting, and the voltage that it gives them at. */
  nameplateW?: number | null;
  ratedVoltageV?: number | null;
  /** How often the conductor passes the jaws; `currentA` is what was shown over the turns. */
  clampTurns?: number;
  /** The meter's stated accuracy: a share of the reading [%] and counts of its last digit. */
  meterAccuracyPct?: number | null;
  meterAccuracyCounts?: number | null;
  isTrueRms?: boolean | null;
  /** Voltage at the outlet with the device off. */
  openVoltageV?: number | null;
};

export type ElectricalFinding = Finding<ElectricalFindingCode>;

export type PowerRefusalCode =
  | "impossible-entry"
  | "current-missing"
  | "voltage-missing"
  | "power-missing"
  | "current-below-meter"
  | "class-unknown"
  | "class-without-setting";

export type SettingPowerOk = {
  status: "ok";
  basis: PowerBasis;
  powerW: ValueRange;
  standardUncertaintyW: number;
  /** k = 2, about 95 %. */
  expandedUncertaintyW: number;
  /** True when `powerW.value` is V·I of a load whose power factor is not known: the power is that or less. */
  isUpperBound: boolean;
  findings: ElectricalFinding[];
};

export type SettingPowerRefused = { status: "refused"; code: PowerRefusalCode; message: string };

export type SettingPower = SettingPowerOk | SettingPowerRefused;
