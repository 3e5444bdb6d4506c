import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import type { LivePicture, Worked } from "@/lib/proposals/live-picture";

/** What an issued proposal said would come of it, in the terms of a proof. */
export type Expected = {
  zoneIds: number[];
  /** Of the mean occupied zone air of the proposal's zones in the cooling season. */
  riseK: number;
  /** Share of the degree-hours below the zones' mean target that is left. */
  degreeHoursLeft: number;
  coldRatio: number;
  hotRatio: number;
  heatersGiven: number;
  /** Electricity saved on an occupied day of the season. */
  kwhPerDay: number;
  /** The same with its 80 % range and working; null in copies that were issued before it was frozen. */
  kwhPerDayRange: Worked | null;
};

export function expectedOf({ variants, chosenVariantId, inputs, proposal }: FrozenProposal): Expected {
  const chosen = variants.find((each) => each.variantId === chosenVariantId);
  if (!chosen) throw new Error("an issued proposal has no chosen variant");
  const { temps, cold, hot, heatersGiven, electricKwh } = chosen.picture;
  const mean = (of: "hoursBefore" | "hoursAfter"): number => {
    const hours = temps.reduce((sum, each) => sum + each[of], 0);
    return hours > 0 ? temps.reduce((sum, each) => sum + each[of] * (each.lowC + 0.25), 0) / hours : 0;
  };
  const zoneIds = [...new Set(chosen.levers.map((each) => each.zoneId))];
  const targets = inputs.zones.filter((each) => zoneIds.includes(each.zoneId)).map((each) => each.targetZoneAirTempC);
  const targetC = targets.reduce((sum, each) => sum + each, 0) / Math.max(1, targets.length);
  const below = (of: "hoursBefore" | "hoursAfter"): number =>
    temps.reduce((sum, each) => sum + each[of] * Math.max(0, targetC - each.lowC - 0.25), 0);
  const months = ((proposal.seasonToMonth - proposal.seasonFromMonth + 12) % 12) + 1;
  return {
    zoneIds,
    degreeHoursLeft: below("hoursBefore") > 0 ? below("hoursAfter") / below("hoursBefore") : 1,
    riseK: mean("hoursAfter") - mean("hoursBefore"),
    coldRatio: cold && cold.before > 0 ? cold.after / cold.before : 1,
    hotRatio: hot && hot.before > 0 ? hot.after / hot.before : 1,
    heatersGiven: heatersGiven.expected,
    kwhPerDay: electricKwh.stated / ((inputs.occupiedDays * months) / 12),
    kwhPerDayRange: null,
    ...whileStanding(chosen.picture),
  };
}

/** What the season and hours themselves should show, in place of what a year shows of them; nothing in older copies. */
function whileStanding({ electricPerDayKwh, whileItStands }: LivePicture): Partial<Expected> {
  if (!electricPerDayKwh || !whileItStands) return {};
  const { riseK, degreeHoursLeft, coldRatio, hotRatio } = whileItStands;
  return {
    riseK,
    degreeHoursLeft,
    coldRatio: coldRatio ?? 1,
    hotRatio: hotRatio ?? 1,
    kwhPerDay: electricPerDayKwh.stated,
    kwhPerDayRange: electricPerDayKwh,
  };
}
