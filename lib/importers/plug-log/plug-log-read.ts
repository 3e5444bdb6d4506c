import type { Finding } from "@/lib/findings/finding";
import type { PlugQuantity } from "./plug-quantity";

export type PlugReadFindingCode =
  | "clock-set-back"
  | "rows-not-read"
  | "stamps-repeated"
  | "counter-went-back"
  | "power-from-current"
  | "negative-readings"
  | "later-columns-not-used";

/** How many rows of the file became what. They add up to the rows of the file. */
export type PlugRowCounts = { inFile: number; accepted: number; repaired: number; rejected: number; ignored: number };

/** A row that was not plainly accepted: physical line and a sentence. */
export type PlugRowNote = { line: number; fate: "repaired" | "rejected" | "ignored"; message: string };

/** What only a person can say of this file. */
export type PlugQuestion = "unit" | "date-order" | "energy";

export type PlugLogRead =
  | {
      status: "ok";
      /** Ascending instants and the power from each to the next, as far as it is held (`lib/electrical/plug-log`). */
      tsUtcSeconds: Float64Array;
      powerW: Float64Array;
      quantity: PlugQuantity;
      unit: string;
      valueHeading: string;
      rows: PlugRowCounts;
      /** The first hundred. */
      notes: readonly PlugRowNote[];
      findings: readonly Finding<PlugReadFindingCode>[];
    }
  | { status: "ask"; question: PlugQuestion; message: string }
  | { status: "refused"; code: string; message: string };

export const refusePlugLog = (code: string, message: string): PlugLogRead => ({ status: "refused", code, message });

/** The sentence for what was noticed while a plug logger's file was read. */
export function plugReadFindingText({ code, evidence }: Finding<PlugReadFindingCode>): string {
  switch (code) {
    case "clock-set-back":
      return `The logger's clock was set back by ${evidence.backMinutes} minutes in line ${evidence.line}. Readings before it are placed earlier by as much; the energy is not touched, the hours of the day are those of the later clock.`;
    case "rows-not-read":
      return `${evidence.count} rows could not be read and were left out, the first in line ${evidence.line}: ${evidence.why}.`;
    case "stamps-repeated":
      return `${evidence.count} rows have the same stamp as the row before; the later reading counts.`;
    case "counter-went-back":
      return `The running total went back ${evidence.count} times, first in line ${evidence.line}; those steps are left out.`;
    case "power-from-current":
      return `The file holds amperes. Watts are taken at ${evidence.voltageV} V and a power factor of 1: right for a plain resistive heater, an upper bound for a fan.`;
    case "negative-readings":
      return `${evidence.count} readings below 0 are taken as 0.`;
    case "later-columns-not-used":
      return `The column "${evidence.used}" was read; further columns of numbers were not.`;
  }
}
