import type { PowerBasis } from "@/lib/electrical/device-kind";
import type { DeviceSheet, SheetInput, SheetLine } from "@/lib/electrical/device-sheet";
import { resolvedSetting } from "@/lib/electrical/resolved-setting";
import type { UseBasis } from "@/lib/electrical/use-basis";
import type { DeviceInput } from "@/lib/services/devices/device-input";
import { formatNumber } from "@/lib/units/format";

/** What stands in the form, as the sheet takes it. */
export function sheetInputFromDevice(device: DeviceInput, price: SheetInput["price"]): SheetInput {
  return {
    kind: device.kind,
    deviceClassId: device.deviceClass,
    price,
    nameplateW: device.nameplateW ?? null,
    nameplateVoltageV: device.nameplateVoltageV ?? null,
    settings: device.settings.map((setting) => ({
      name: setting.name,
      basis: setting.basis,
      clampTurns: setting.clampTurns ?? 1,
      meterAccuracyPct: setting.meterAccuracyPct ?? null,
      meterAccuracyCounts: setting.meterAccuracyCounts ?? null,
      isTrueRms: setting.isTrueRms ?? null,
      openVoltageV: setting.openVoltageV ?? null,
      useBasis: setting.useBasis ?? "entered",
      ...resolvedSetting(setting),
      currentResolutionA: setting.currentResolutionA ?? null,
      voltageV: setting.voltageV ?? null,
      voltageMeasured: setting.voltageMeasured ?? false,
      powerFactor: setting.powerFactor ?? null,
      dutyFraction: setting.dutyFraction ?? 1,
    })),
  };
}

const UNKNOWN = "not known";

/** How a power is known, in a few words beside it. */
const ORIGINS: Record<PowerBasis, string> = {
  "plug-meter": "plug-in meter",
  clamp: "clamp meter",
  nameplate: "nameplate",
  "class-default": "usual value",
};
export const originOf = (basis: PowerBasis): string => ORIGINS[basis];

const USES: Record<UseBasis, string> = {
  "plug-logger": "logged",
  schedule: "schedule",
  survey: "told",
  entered: "entered",
};

/** Hours selected with where they are from; empty when there are none. */
export const hoursWords = ({ hoursPerYear, useBasis }: Pick<SheetLine, "hoursPerYear" | "useBasis">): string =>
  hoursPerYear > 0 ? `${formatNumber(hoursPerYear, { decimals: 0 })} (${USES[useBasis]})` : "";

/** Circuit that a device hangs on, as its sheet speaks of it. */
export type SheetCircuit = { id: number; name: string; breakerRatingA: number | null };

/** Current of a setting as a share of the breaker's rating in %; not known without a rating. */
export const shareOfCircuit = (line: SheetLine, circuit: SheetCircuit): string =>
  line.currentA === null || circuit.breakerRatingA === null
    ? UNKNOWN
    : formatNumber((100 * line.currentA) / circuit.breakerRatingA, { decimals: 0 });

/** The figures of one line in words of digits; an upper bound is written as one. */
export function lineFigures(line: SheetLine): { powerW: string; rangeW: string; energyKwh: string; cost: string } {
  if (line.power.status === "refused") return { powerW: UNKNOWN, rangeW: "", energyKwh: UNKNOWN, cost: UNKNOWN };
  const { powerW, isUpperBound } = line.power;
  const bound = isUpperBound && powerW.value > 0 ? "\u2264\u2009" : "";
  return {
    powerW: bound + formatNumber(powerW.value, { decimals: 1 }),
    rangeW: `${formatNumber(powerW.low, { decimals: 0 })}\u2013${formatNumber(powerW.high, { decimals: 0 })}`,
    energyKwh: line.energyKwh ? bound + formatNumber(line.energyKwh.value, { decimals: 1 }) : UNKNOWN,
    cost: line.cost ? bound + formatNumber(line.cost.value, { decimals: 2 }) : UNKNOWN,
  };
}

/** Cost of a line with its currency, for a place without a heading. */
export function costWords(line: SheetLine, currency: string): string {
  if (!line.cost) return "";
  const bound = line.power.status === "ok" && line.power.isUpperBound && line.cost.value > 0 ? "\u2264\u2009" : "";
  const style = { style: "currency", currency } as const;
  return bound + new Intl.NumberFormat("en", style).format(line.cost.value);
}

export function totalFigures(sheet: DeviceSheet): { energyKwh: string; cost: string } {
  if (sheet.energy.status === "refused" || !sheet.totalCost) return { energyKwh: UNKNOWN, cost: UNKNOWN };
  const bound = sheet.energy.isUpperBound ? "\u2264\u2009" : "";
  return {
    energyKwh: bound + formatNumber(sheet.energy.totalKwh.value, { decimals: 1 }),
    cost: bound + formatNumber(sheet.totalCost.value, { decimals: 2 }),
  };
}
