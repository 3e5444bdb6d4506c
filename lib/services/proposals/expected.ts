import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { type LivePicture, SAVING_PARTS, type SavingPart, type Worked } from "@/lib/proposals/live-picture";
import { AIR_PARTS, type AirPart } from "@/lib/proposals/verification-result";
import type { Working } from "@/lib/working/working";

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
  /** Of a year, as issued, and the occupied days of the season that it falls on. */
  electricKwh: number;
  seasonDays: number;
  /** Place of the proposed variant, by which the address of its workings goes. */
  place: number;
  /** Of a day while the change is in force, not on the average of a year in which it may be undone. */
  air: { kwhPerDay: number; parts: AirPart[] };
  /** Of a day, of heaters given up less what came in their place; ends by how many go. */
  heaters: { value: number; low: number; high: number };
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
  const known = chosen.picture.electricPerDayKwh?.working.terms.find(({ symbol }) => symbol === "D");
  const seasonDays = known?.value ?? (inputs.occupiedDays * months) / 12;
  const partKwh = partsOf(electricKwh.working);
  const kept = inputs.shared.changeKeptFraction.term.value;
  return {
    zoneIds,
    degreeHoursLeft: below("hoursBefore") > 0 ? below("hoursAfter") / below("hoursBefore") : 1,
    riseK: mean("hoursAfter") - mean("hoursBefore"),
    coldRatio: cold && cold.before > 0 ? cold.after / cold.before : 1,
    hotRatio: hot && hot.before > 0 ? hot.after / hot.before : 1,
    heatersGiven: heatersGiven.expected,
    kwhPerDay: electricKwh.stated / seasonDays,
    kwhPerDayRange: null,
    electricKwh: electricKwh.stated,
    seasonDays,
    place: variants.indexOf(chosen),
    air: {
      kwhPerDay: AIR_PARTS.reduce((sum, each) => sum + partKwh(each), 0) / kept / seasonDays,
      parts: AIR_PARTS.filter((each) => partKwh(each) !== 0),
    },
    heaters: heatersOf((partKwh("heaters") + partKwh("rebound")) / seasonDays, heatersGiven),
    ...whileStanding(chosen.picture),
  };
}

/** Electricity of a part in the working of the sum [kWh a year]: its terms are numbered in the order of the parts. */
function partsOf({ terms }: Working): (part: SavingPart) => number {
  const order = Object.keys(SAVING_PARTS) as SavingPart[];
  return (part) => terms.find((each) => each.symbol === `E_${order.indexOf(part) + 1}`)?.value ?? 0;
}

/** Electricity of heaters given up [kWh a day], with ends by how many go. */
function heatersOf(value: number, { expected, low, high }: LivePicture["heatersGiven"]): Expected["heaters"] {
  const ends = [low, high].map((heaters) => (expected > 0 ? (value * heaters) / expected : value));
  return { value, low: Math.min(value, ...ends), high: Math.max(value, ...ends) };
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
