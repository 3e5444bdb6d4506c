import { type RegisterRecord, settingsOf } from "@/db/queries/register";
import { type DeviceFigures, deviceFigures } from "@/lib/electrical/device-figures";
import type { SheetInput } from "@/lib/electrical/device-sheet";

/** Figures by everything that they are worked out from: the same settings at the same price are the same figures. */
const kept = new Map<string, DeviceFigures>();
/** Beyond this many the oldest go: about two registers of 10,000 devices. */
const MOST_KEPT = 20_000;

/** Figures of a device, worked out once for as long as nothing that they rest on changes. */
export function keptFigures(record: RegisterRecord, price: SheetInput["price"]): DeviceFigures {
  const { kind, deviceClass, nameplateW, nameplateVoltageV, settingsText } = record;
  const key = `${price.pricePerKwh} ${kind} ${deviceClass} ${nameplateW} ${nameplateVoltageV} ${settingsText}`;
  const before = kept.get(key);
  if (before) return before;
  const figures = deviceFigures({
    kind,
    deviceClassId: deviceClass,
    settings: settingsOf(record),
    nameplateW,
    nameplateVoltageV,
    price,
  });
  if (kept.size >= MOST_KEPT) for (const oldest of [...kept.keys()].slice(0, MOST_KEPT / 10)) kept.delete(oldest);
  kept.set(key, figures);
  return figures;
}
