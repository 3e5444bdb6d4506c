import type { ZoneEvidence } from "./zone-evidence";

/** Whether an outdoor air temperature goes with the zone's record: without one winter cannot be told from the cooling season. */
export const hasOutdoor = (zone: ZoneEvidence): boolean => zone.exposure.byOutdoorBin !== null;
