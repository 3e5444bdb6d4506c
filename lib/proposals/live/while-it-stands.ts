import { mediansOfSeason, type SeasonRecord } from "@/lib/comfort-reports/both-sides/season-record";
import { LIVE_STATES } from "../live-building";
import type { WhileItStands } from "../live-picture";
import type { EnergySaved } from "./energy-saved";
import { movedAir } from "./expected-sides";
import { degreeHoursBelow } from "./temperature-hours";

/** What the hours in which the levers act should show by themselves: what a proof compares, whatever the rest of the year does. */
export function whileItStands(
  { reports, tempsC }: { reports: SeasonRecord | null; tempsC: readonly number[] },
  byZone: EnergySaved["byZone"],
): WhileItStands {
  let [hours, rise, khBefore, khAfter] = [0, 0, 0, 0];
  for (const { zone, acting, effect } of byZone) {
    if (!zone.states || !acting) continue;
    for (const name of LIVE_STATES) {
      const state = zone.states[name];
      if (state.hours === 0) continue;
      const share = acting[name].hours / state.hours;
      hours += acting[name].hours;
      rise += acting[name].hours * effect.rises[name];
      khBefore += share * degreeHoursBelow(state, tempsC, zone.targetZoneAirTempC);
      khAfter += share * degreeHoursBelow(state, tempsC, zone.targetZoneAirTempC, effect.rises[name]);
    }
  }
  return {
    riseK: hours > 0 ? rise / hours : 0,
    degreeHoursLeft: khBefore > 0 ? khAfter / khBefore : 1,
    ...reportRatios(reports, byZone),
  };
}

/** Reports after over before, were all of the zones' hours those in which the levers act. */
function reportRatios(
  record: SeasonRecord | null,
  byZone: EnergySaved["byZone"],
): Pick<WhileItStands, "coldRatio" | "hotRatio"> {
  const rises = new Map(byZone.map((line) => [line.zone.zoneId, movedAir(line).riseK]));
  if (!record?.zones.some(({ zoneId }) => rises.has(zoneId))) return { coldRatio: null, hotRatio: null };
  const at = (share: number) =>
    mediansOfSeason(record, (zoneId) => {
      const riseK = rises.get(zoneId);
      return riseK === undefined ? null : { riseK, share };
    });
  const [before, after] = [at(0), at(1)];
  return {
    coldRatio: before.tooCold > 0 ? after.tooCold / before.tooCold : null,
    hotRatio: before.tooWarm > 0 ? after.tooWarm / before.tooWarm : null,
  };
}
