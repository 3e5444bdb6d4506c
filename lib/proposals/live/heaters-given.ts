import { LIVE_STATES, type LiveZone } from "../live-building";
import type { ActingShares } from "./felt";
import { degreeHoursBelow } from "./temperature-hours";
import type { Rises } from "./zone-effect";
import type { LeverAmounts } from "./zone-levers";

/** Foot warmer while someone sits there, W: mean of a Berkeley field study, 3 to 21 W (escholarship 3cf6268m, abstract). */
export const FOOT_WARMER_W = 10;
/** A fan with a shaded-pole motor for 1,000 h a year (highest of the fans measured by Tang et al. 2022, 29.9 W). */
export const DESK_FAN_KWH = 29.9;

/** Share of the zone's degree-hours below its target that the rises take away, 0 to 1; 0 where there are none. */
export function coldTakenAway(zone: LiveZone, rises: Rises, shares: ActingShares, tempsC: readonly number[]): number {
  const { states, targetZoneAirTempC: targetC } = zone;
  if (!states) return 0;
  let before = 0;
  let taken = 0;
  for (const name of LIVE_STATES) {
    const present = degreeHoursBelow(states[name], tempsC, targetC);
    before += present;
    taken += shares[name] * (present - degreeHoursBelow(states[name], tempsC, targetC, rises[name]));
  }
  return before > 0 ? Math.min(1, Math.max(0, taken / before)) : 0;
}

/**
 * Share of a zone's heaters that go: those replaced by agreement, and of the others the part that people give up once
 * their zone is warm, as far as its cold goes (judgement, no source: half as warm, half as many).
 */
export const heatersGone = (levers: LeverAmounts, coldGone: number, removalFraction: number): number =>
  1 - (1 - levers["personal-device"] / 100) * (1 - removalFraction * coldGone);

/** The same of their energy: replaced heaters count in the season and hours of the proposal only. */
export const heaterEnergyGone = (
  levers: LeverAmounts,
  { coldGone, actingShare }: { coldGone: number; actingShare: number },
  removalFraction: number,
): number => {
  const replaced = levers["personal-device"] / 100;
  return replaced * actingShare + (1 - replaced) * removalFraction * coldGone;
};

/** Share of people who come to want it cooler, over the hours of a year; never below 0. */
export function newlyWarm(
  { states }: LiveZone,
  rises: Rises,
  shares: ActingShares,
  coolerShareAt: (airTempC: number) => number,
): number {
  if (!states) return 0;
  let hours = 0;
  let more = 0;
  for (const name of LIVE_STATES) {
    const { hours: own, zoneAirTempC } = states[name];
    hours += own;
    more += own * shares[name] * (coolerShareAt(zoneAirTempC + rises[name]) - coolerShareAt(zoneAirTempC));
  }
  return hours > 0 ? Math.max(0, more / hours) : 0;
}
