/** Rules by which a circuit is judged: jurisdiction and edition; the rules themselves stand in `rule-sets`. */
export const RULE_SET_IDS = ["nec-2017", "nec-2023", "iec-uk-2018"] as const;
export type RuleSetId = (typeof RULE_SET_IDS)[number];

/** A radial ends at its last outlet; a ring comes back to the board, so that its current has two ways. */
export const CIRCUIT_WIRINGS = ["radial", "ring"] as const;
export type CircuitWiring = (typeof CIRCUIT_WIRINGS)[number];

/** What a device is plugged into. */
export const OUTLET_KINDS = [
  "single",
  "duplex",
  "twin-socket",
  "floor-box",
  "furniture-outlet",
  "power-strip",
  "extension-lead",
  "unknown",
] as const;
export type OutletKind = (typeof OUTLET_KINDS)[number];

/** How it is known which breaker feeds an outlet, the surest first; what is assumed is not known. */
export const MAPPING_BASES = [
  "circuit-tracer",
  "breaker-switched",
  "panel-schedule",
  "outlet-label",
  "assumed",
] as const;
export type MappingBasis = (typeof MAPPING_BASES)[number];
