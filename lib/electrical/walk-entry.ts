/** What a walk-through enters of a desk: nothing there, a device found, one of the register seen again or missed. */
export const WALK_ENTRY_KINDS = ["nothing", "device", "seen", "missing"] as const;
export type WalkEntryKind = (typeof WALK_ENTRY_KINDS)[number];
