import { statusLabel } from "@/lib/electrical/device-status";
import type { DeviceView } from "@/lib/services/devices/read";
import type { DeviceRecord } from "@/lib/services/devices/record";
import { formatLocalDate } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";
import { itemField } from "./inspection-entries";

/** Answers that the circuit's own verdict gives to the two items about it; nothing where it is not established. */
export function circuitItems(circuit: DeviceRecord["circuit"]): Record<string, string> {
  if (circuit?.assessment.status !== "ok") return {};
  const { verdict } = circuit.assessment;
  const overLimit = verdict === "over-continuous-limit" || verdict === "over-single-item-share";
  return {
    [itemField("circuit-over-rating", "outcome")]: verdict === "over-rating" ? "fail" : "pass",
    [itemField("circuit-over-limit", "outcome")]: overLimit ? "fail" : verdict === "over-rating" ? "not-seen" : "pass",
  };
}

/** The page's one sentence. */
export function deviceLede(device: DeviceView, className: string): string {
  const place = device.deskCode ? `desk ${device.deskCode}, zone ${device.zoneCode}` : `zone ${device.zoneCode}`;
  const gone = device.retiredOn ? ` on ${formatLocalDate(device.retiredOn)}: no longer counted` : "";
  const status = device.status === "found" ? "" : `, ${statusLabel(device.status)}${gone}`;
  return `${className} at ${place}, found on ${formatLocalDate(device.foundOn)}${status}.`;
}

/** Two readings of a control, and by how much they differ. */
export function controlReadings({ lowEndW, highEndW }: { lowEndW: number | null; highEndW: number | null }): string {
  if (lowEndW === null || highEndW === null) return "";
  const watts = (value: number): string => formatNumber(value, { decimals: 1 });
  return `${watts(lowEndW)} and ${watts(highEndW)}`;
}

/** How an inspection came out, in a few words. */
export function inspectionWords(inspection: DeviceRecord["inspections"][number]): string {
  const count = (outcome: string): number => inspection.items.filter((item) => item.outcome === outcome).length;
  const parts = [
    [count("fail"), "found at fault"],
    [count("pass"), "in order"],
    [count("not-applicable"), "not applicable"],
    [count("not-seen"), "not looked at"],
  ] as const;
  return parts.flatMap(([items, words]) => (items > 0 ? `${items} ${words}` : [])).join(", ");
}
