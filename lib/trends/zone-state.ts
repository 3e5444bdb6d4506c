/**
 * What a zone's controller was doing in an occupied interval. `undetermined` means that the trend which would tell
 * (airflow, valve, cooling stage) is missing: it is never taken for cooling.
 */
export const OCCUPIED_STATES = ["cooling", "deadband", "reheat", "fault", "undetermined"] as const;
export type OccupiedState = (typeof OCCUPIED_STATES)[number];

/** State of any interval of the grid; `no-data` where the zone air temperature is missing. */
export type ZoneState = OccupiedState | "unoccupied" | "no-data";
