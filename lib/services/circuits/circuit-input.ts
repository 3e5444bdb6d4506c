import { z } from "zod";
import { CIRCUIT_WIRINGS, MAPPING_BASES, OUTLET_KINDS, RULE_SET_IDS } from "@/lib/electrical/circuit/circuit-kinds";
import { type EntryRange, withinFault } from "@/lib/electrical/entry-range";

/** Empty, or a number within its range; NaN is what was typed and is no number. */
const ranged = (range: EntryRange) =>
  z
    .union([z.number(), z.nan()])
    .nullable()
    .default(null)
    .superRefine((value, refinement) => {
      const message = withinFault(value, range);
      if (message) refinement.addIssue({ code: "custom", message });
    });

const amperes = (what: string, high: number, low = 0) => ranged({ what, example: "3.5", low, high, unit: "A" });

export const circuitInput = z.object({
  panel: z.string().trim().min(1, "Name the panel, as its door does.").max(40, "Keep the panel under 40 characters."),
  circuit: z.string().trim().min(1, "Give the circuit's number.").max(40, "Keep the circuit under 40 characters."),
  leg: z.string().trim().max(20, "Keep the leg under 20 characters.").default(""),
  ruleSet: z.enum(RULE_SET_IDS, "Choose the rules that hold here."),
  breakerRatingA: amperes("The breaker's rating", 200, 1),
  voltageV: ranged({ what: "The voltage", example: "120", low: 50, high: 480, unit: "V" }),
  receptacleRatingA: amperes("The receptacle's rating", 100, 1),
  wiring: z.enum(CIRCUIT_WIRINGS, "Say whether it is a radial or a ring.").default("radial"),
  multiOutlet: z.boolean().default(true),
  listedFor100Percent: z.boolean().default(false),
  baseContinuousA: amperes("The continuous base load", 200),
  baseNonContinuousA: amperes("The other base load", 200),
  baseLoadNote: z.string().trim().max(200, "Keep what is said of the base load under 200 characters.").default(""),
  sharedNeutral: z.boolean().nullable().default(null),
  tripNote: z.string().trim().max(200, "Keep what is said of trips under 200 characters.").default(""),
  note: z.string().trim().max(500, "Keep the note under 500 characters.").default(""),
});

export type CircuitEntry = z.input<typeof circuitInput>;

export const hookUpInput = z.object({
  circuitId: z.number().int().nullable(),
  circuitMapping: z.enum(MAPPING_BASES, "Say how it is known which breaker feeds the outlet."),
  outletKind: z.enum(OUTLET_KINDS, "Say what it is plugged into."),
  outletLabel: z.string().trim().max(40, "Keep the outlet's name under 40 characters.").default(""),
});

export type HookUpEntry = z.input<typeof hookUpInput>;
