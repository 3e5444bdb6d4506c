import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import type { LivePicture, Worked } from "@/lib/proposals/live-picture";

/** What an issued proposal said would come of it, in the terms of a proof. */
export type Expected = {
  zoneIds: number[];
  /** Of the mean zone air of the proposal's zones, in its season and hours. */
  riseK: number;
  /** Share of the degree-hours below the zones' targets that is left in them. */
  degreeHoursLeft: number;
  coldRatio: number;
  hotRatio: number;
  heatersGiven: number;
  /** Electricity saved on an occupied day of the season. */
  kwhPerDay: number;
  /** The same with its 80 % range and working; null in copies that were issued before it was frozen. */
  kwhPerDayRange: Worked | null;
};

export function expectedOf(frozen: FrozenProposal): Expected {
  const { variants, chosenVariantId, inputs, proposal } = frozen;
  const chosen = variants.find((each) => each.variantId === chosenVariantId);
  if (!chosen) throw new Error("an issued proposal has no chosen variant");
  const { heatersGiven, electricKwh, electricPerDayKwh, whileItStands } = chosen.picture;
  const zoneIds = [...new Set(chosen.levers.map((each) => each.zoneId))];
  const months = ((proposal.seasonToMonth - proposal.seasonFromMonth + 12) % 12) + 1;
  return {
    zoneIds,
    ...(whileItStands
      ? { ...whileItStands, coldRatio: whileItStands.coldRatio ?? 1, hotRatio: whileItStands.hotRatio ?? 1 }
      : overTheYear(frozen, zoneIds, chosen.picture)),
    heatersGiven: heatersGiven.expected,
    // Copies that were issued before say only what the first year saves.
    kwhPerDay: electricPerDayKwh?.stated ?? electricKwh.stated / ((inputs.occupiedDays * months) / 12),
    kwhPerDayRange: electricPerDayKwh ?? null,
  };
}

/** Of copies that were issued before the season had figures of its own: read off the hours of the year. */
function overTheYear(
  { inputs }: FrozenProposal,
  zoneIds: readonly number[],
  { temps, cold, hot }: LivePicture,
): Pick<Expected, "riseK" | "degreeHoursLeft" | "coldRatio" | "hotRatio"> {
  const mean = (of: "hoursBefore" | "hoursAfter"): number => {
    const hours = temps.reduce((sum, each) => sum + each[of], 0);
    return hours > 0 ? temps.reduce((sum, each) => sum + each[of] * (each.lowC + 0.25), 0) / hours : 0;
  };
  const targets = inputs.zones.filter((each) => zoneIds.includes(each.zoneId)).map((each) => each.targetZoneAirTempC);
  const targetC = targets.reduce((sum, each) => sum + each, 0) / Math.max(1, targets.length);
  const below = (of: "hoursBefore" | "hoursAfter"): number =>
    temps.reduce((sum, each) => sum + each[of] * Math.max(0, targetC - each.lowC - 0.25), 0);
  const ratio = (side: LivePicture["cold"]): number => (side && side.before > 0 ? side.after / side.before : 1);
  return {
    riseK: mean("hoursAfter") - mean("hoursBefore"),
    degreeHoursLeft: below("hoursBefore") > 0 ? below("hoursAfter") / below("hoursBefore") : 1,
    coldRatio: ratio(cold),
    hotRatio: ratio(hot),
  };
}
