import { seasonModel } from "@/lib/comfort-reports/both-sides/season-record";
import { coolerShareAt } from "@/lib/comfort-reports/both-sides/wanted-shares";
import type { ActingWindow } from "../acting-window";
import type { ZoneLever } from "../lever";
import { LIVE_STATES, type LiveBuilding, type LiveZone, type SharedNumbers } from "../live-building";
import { type ActingHours, actingHours } from "./acting-hours";
import { coldTakenAway, newlyWarm } from "./heaters-given";
import { type ActingByState, zoneEffect } from "./zone-effect";
import { type LeverAmounts, leversByZone } from "./zone-levers";

/**
 * What a zone's people feel of its levers: share of its cold that goes, also if the levers acted all year, of
 * people who come to want it cooler, and of its hours that are acted on.
 */
export type Felt = { coldGone: number; coldGoneAllYear: number; warm: number; actingShare: number };

/** A variant's levers by zone, when they act, and what people feel of them: worked out once, at the stated values. */
export type Move = {
  levers: ReadonlyMap<number, LeverAmounts>;
  acting: ActingHours;
  felt: ReadonlyMap<number, Felt>;
};

export function moveOf(
  building: LiveBuilding,
  chosen: readonly ZoneLever[],
  window: ActingWindow,
  stated: SharedNumbers,
): Move {
  const levers = leversByZone(chosen);
  const acting = actingHours(building, window);
  const coolerAt = building.reports ? coolerShareAt(seasonModel(building.reports)) : null;
  const felt = new Map<number, Felt>();
  for (const zone of building.zones) {
    const own = levers.get(zone.zoneId);
    const hours = acting.byZone.get(zone.zoneId) ?? null;
    if (!own) continue;
    const { rises } = zoneEffect(zone, own, stated, hours);
    const share = sharesOf(zone, hours);
    felt.set(zone.zoneId, {
      coldGone: coldTakenAway(zone, rises, share, building.tempsC),
      coldGoneAllYear: coldTakenAway(zone, rises, ALL, building.tempsC),
      warm: coolerAt ? newlyWarm(zone, rises, share, coolerAt) : 0,
      actingShare: actingShare(zone, hours),
    });
  }
  return { levers, acting, felt };
}

const ALL: ActingShares = { cooling: 1, deadband: 1, reheat: 1, other: 1 };

/** Share of each state's hours in which the levers act, 0 to 1. */
export type ActingShares = Record<(typeof LIVE_STATES)[number], number>;

export const sharesOf = ({ states }: LiveZone, acting: ActingByState | null): ActingShares =>
  Object.fromEntries(
    LIVE_STATES.map((name) => {
      const hours = states?.[name].hours ?? 0;
      return [name, hours > 0 && acting ? acting[name].hours / hours : 0];
    }),
  ) as ActingShares;

function actingShare({ states }: LiveZone, acting: ActingByState | null): number {
  if (!states || !acting) return 0;
  const hours = LIVE_STATES.reduce((sum, name) => sum + states[name].hours, 0);
  return hours > 0 ? LIVE_STATES.reduce((sum, name) => sum + acting[name].hours, 0) / hours : 0;
}
