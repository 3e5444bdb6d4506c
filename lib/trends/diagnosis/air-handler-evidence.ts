import { naturalCompare } from "@/lib/order/natural-compare";
import { minimumAirflowOvercooling } from "./rules/minimum-airflow-overcooling";
import { reheatAtMinimum } from "./rules/reheat-at-minimum";
import { isShortByRecord } from "./rules/short-of-air";
import type { AirHandlerEvidence, ZoneEvidence } from "./zone-evidence";

/** A zone beside its air handler; `ownSupplyAir` when the supply air temperature is mapped to the zone and not to the building. */
export type ServedZone = { zone: ZoneEvidence; airHandler: string; ownSupplyAir: boolean };

/**
 * What the zones of each air handler do together, by zone code, for rows 10 and 11 of the table. A supply air temperature of the
 * building cannot be told apart by air handler: where there are several, only zones with one of their own have an entry.
 */
export function airHandlerEvidence(served: readonly ServedZone[]): Map<string, AirHandlerEvidence> {
  const names = new Set(served.map(({ airHandler }) => airHandler));
  const found = new Map<string, AirHandlerEvidence>();
  for (const name of names) {
    const members = served.filter(({ airHandler }) => airHandler === name);
    const codesOf = (holds: (zone: ZoneEvidence) => boolean): string[] =>
      members
        .filter(({ zone }) => holds(zone))
        .map(({ zone }) => zone.zoneCode)
        .sort(naturalCompare);
    const evidence: AirHandlerEvidence = {
      name,
      zones: members.length,
      zonesAtMinimum: codesOf((zone) => reheatAtMinimum(zone) !== null || minimumAirflowOvercooling(zone) !== null),
      zonesShortOfAir: codesOf(isShortByRecord),
    };
    for (const { zone, ownSupplyAir } of members)
      if (names.size === 1 || ownSupplyAir) found.set(zone.zoneCode, evidence);
  }
  return found;
}
