import { z } from "zod";
import { MAPPING_BASES } from "@/lib/electrical/circuit/circuit-kinds";
import { WALK_ENTRY_KINDS } from "@/lib/electrical/walk-entry";

const deviceFound = z.object({
  label: z.string().max(60),
  deviceClass: z.string().max(60),
  meterKind: z.enum(["plug-meter", "clamp"]),
  meterName: z.string().max(80).default(""),
  /** Step of the clamp meter's last digit; null when it was not said. */
  meterResolutionA: z.number().positive().max(1).nullable().default(null),
  /** Watts or amperes by the kind of meter; settings that are left out were not measured. */
  readings: z.array(z.object({ setting: z.string().max(40), value: z.number() })).max(12),
  circuitId: z.number().int().nullable().default(null),
  circuitMapping: z.enum(MAPPING_BASES).default("assumed"),
  nameplateW: z.number().nullable().default(null),
  note: z.string().max(500).default(""),
});

/** One entry as the phone sends it. `known` are the entries of the desk that whoever made it had seen. */
export const walkEntryInput = z.object({
  clientId: z.uuid("The entry has no id of its own: reload the page and enter it again."),
  walkId: z.number().int(),
  deskCode: z.string().min(1).max(40),
  kind: z.enum(WALK_ENTRY_KINDS),
  madeAtMs: z.number().int(),
  deviceId: z.number().int().nullable().default(null),
  device: deviceFound.nullable().default(null),
  known: z.array(z.string().max(60)).max(50).default([]),
});

export type WalkEntryInput = z.input<typeof walkEntryInput>;
export type DeviceFound = z.output<typeof deviceFound>;

/** What became of an entry. Only `stored` and `repeat` are done with; the phone keeps the others and shows them. */
export type EntryOutcome = {
  clientId: string;
  state: "stored" | "repeat" | "conflict" | "refused";
  message: string;
  /** Of a conflict: the entries that the phone did not know. */
  unknown: string[];
  /** Of a refusal: the field that another value would help. */
  field: string | null;
};
