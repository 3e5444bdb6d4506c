import type { ZoneState } from "./zone-state";

/** Zone states by their code in a state array. The occupied states come first, in the order of OCCUPIED_STATES. */
export const STATE_BY_CODE: readonly ZoneState[] = [
  "cooling",
  "deadband",
  "reheat",
  "fault",
  "undetermined",
  "unoccupied",
  "no-data",
];

export const COOLING = 0;
export const DEADBAND = 1;
export const REHEAT = 2;
export const FAULT = 3;
export const UNDETERMINED = 4;
export const UNOCCUPIED = 5;
export const NO_DATA = 6;
