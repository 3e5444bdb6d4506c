/** EPW's missing mark for the dry bulb: values at or above it are missing (EnergyPlus, Auxiliary Programs, EPW data dictionary). */
const EPW_MISSING_C = 99.9;
/** TMY3's missing mark (Wilcox and Marion, Users Manual for TMY3 Data Sets, NREL/TP-581-43156, 2008; from memory). */
const TMY3_MISSING = -9900;

/** Limits of the dry bulb in the EPW data dictionary, both exclusive. */
export const DRY_BULB_LIMITS_C = { low: -70, high: 70 } as const;

export type DryBulb = { status: "ok"; dryBulbC: number | null } | { status: "not-a-number"; text: string };

/** Dry bulb in °C from its field; null for a blank or a missing mark. Says nothing about its range. */
export function readDryBulb(text: string): DryBulb {
  const trimmed = text.trim();
  if (trimmed === "") return { status: "ok", dryBulbC: null };
  const value = Number(trimmed);
  if (!Number.isFinite(value)) return { status: "not-a-number", text: trimmed };
  const missing = value >= EPW_MISSING_C || value <= TMY3_MISSING;
  return { status: "ok", dryBulbC: missing ? null : value };
}
