import { type ActingWindow, isInSeason, partOfHour, shareOfDays } from "../acting-window";
import { LIVE_STATES, type LiveBuilding, type LiveState, type LiveStateName } from "../live-building";

/**
 * Hours of a state in which levers act [h]; `coolingHours` are those weighted by the plant's share of the cooling then, beside
 * its mean over all of the state's hours: they are what a kWh of cooling counts by.
 */
export type Acting = { hours: number; coolingHours: number };

export type ActingHours = {
  byZone: ReadonlyMap<number, Record<LiveStateName, Acting>>;
  /** Of a year's days. */
  shareOfDays: number;
};

/**
 * The part of each zone's hours by state that lies in a season and in hours of the day. An hour of the weather year has the
 * states that the zone was recorded in at its outdoor air, so that parts that make up a year add up to it.
 */
export function actingHours(building: Pick<LiveBuilding, "zones" | "calendar">, window: ActingWindow): ActingHours {
  const { binsC, cells } = building.calendar;
  const none = () => binsC.map(() => 0);
  const all = { hours: none(), mechanical: none() };
  const within = { hours: none(), mechanical: none() };
  for (const [month, hour, bin, hours, mechanical] of cells) {
    all.hours[bin] = (all.hours[bin] ?? 0) + hours;
    all.mechanical[bin] = (all.mechanical[bin] ?? 0) + mechanical;
    const part = isInSeason(month, window) ? partOfHour(hour, window) : 0;
    within.hours[bin] = (within.hours[bin] ?? 0) + part * hours;
    within.mechanical[bin] = (within.mechanical[bin] ?? 0) + part * mechanical;
  }
  const perHour = (sums: readonly number[]): number[] =>
    sums.map((each, bin) => ((all.hours[bin] ?? 0) > 0 ? each / (all.hours[bin] as number) : 0));
  const [share, mechanical, mechanicalOfAll] = [within.hours, within.mechanical, all.mechanical].map(perHour);
  const acting = (state: LiveState): Acting => {
    const sum = (weights: number[] | undefined): number =>
      state.hoursByBin.reduce((total, hours, bin) => total + hours * (weights?.[bin] ?? 0), 0);
    const [hours, cooling, coolingOfAll] = [sum(share), sum(mechanical), sum(mechanicalOfAll)];
    return { hours, coolingHours: coolingOfAll > 0 ? (state.hours * cooling) / coolingOfAll : hours };
  };
  const byZone = new Map<number, Record<LiveStateName, Acting>>();
  for (const { zoneId, states } of building.zones) {
    if (!states) continue;
    byZone.set(
      zoneId,
      Object.fromEntries(LIVE_STATES.map((name) => [name, acting(states[name])])) as Record<LiveStateName, Acting>,
    );
  }
  return { byZone, shareOfDays: shareOfDays(window) };
}
