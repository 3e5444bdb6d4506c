import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { SAVING_PARTS, type SavingPart } from "@/lib/proposals/live-picture";
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
  /** Of a year, as issued, and the occupied days that it falls on. */
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
  const { stated } = electricKwh;
  const months = ((proposal.seasonToMonth - proposal.seasonFromMonth + 12) % 12) + 1;
  const seasonDays = (inputs.occupiedDays * months) / 12;
  const partKwh = partsOf(electricKwh.working);
  const kept = inputs.shared.changeKeptFraction.term.value;
  const given = (partKwh("heaters") + partKwh("rebound")) / seasonDays;
  const ofGiven = (heaters: number): number =>
    heatersGiven.expected > 0 ? (given * heaters) / heatersGiven.expected : given;
  const heaterEnds = [ofGiven(heatersGiven.low), ofGiven(heatersGiven.high)].sort((a, b) => a - b) as [number, number];
  return {
    zoneIds,
    degreeHoursLeft: below("hoursBefore") > 0 ? below("hoursAfter") / below("hoursBefore") : 1,
    riseK: mean("hoursAfter") - mean("hoursBefore"),
    coldRatio: cold && cold.before > 0 ? cold.after / cold.before : 1,
    hotRatio: hot && hot.before > 0 ? hot.after / hot.before : 1,
    heatersGiven: heatersGiven.expected,
    kwhPerDay: stated / seasonDays,
    electricKwh: stated,
    seasonDays,
    place: variants.indexOf(chosen),
    air: {
      kwhPerDay: AIR_PARTS.reduce((sum, each) => sum + partKwh(each), 0) / kept / seasonDays,
      parts: AIR_PARTS.filter((each) => partKwh(each) !== 0),
    },
    heaters: { value: given, low: Math.min(given, heaterEnds[0]), high: Math.max(given, heaterEnds[1]) },
  };
}

/** Electricity of a part in the working of the sum [kWh a year]: its terms are numbered in the order of the parts. */
function partsOf({ terms }: Working): (part: SavingPart) => number {
  const order = Object.keys(SAVING_PARTS) as SavingPart[];
  return (part) => terms.find((each) => each.symbol === `E_${order.indexOf(part) + 1}`)?.value ?? 0;
}
