import type { PowerBasis } from "./device-kind";
import { resolvedHours, type UseBasis } from "./use-basis";

/** A setting as it was typed; null for an empty field, NaN for something that is not a number. */
export type TypedSetting = {
  basis: PowerBasis;
  currentA?: number | null;
  rawReadingA?: number | null;
  clampTurns?: number;
  powerW?: number | null;
  nameplateW?: number | null;
  useBasis?: UseBasis;
  hoursPerDay?: number | null;
  daysPerYear?: number | null;
  hoursPerYear?: number | null;
};

/**
 * What follows from a setting as typed: the current from the reading and its turns, the nameplate's watts kept apart from the
 * meter's, the hours of a year from a schedule.
 */
export function resolvedSetting(typed: TypedSetting): {
  rawReadingA: number | null;
  currentA: number | null;
  powerW: number | null;
  nameplateW: number | null;
  hoursPerYear: number;
} {
  const rawReadingA = typed.rawReadingA ?? typed.currentA ?? null;
  const ofLabel = typed.basis === "nameplate" && (typed.nameplateW ?? null) === null;
  return {
    rawReadingA,
    currentA: rawReadingA === null ? null : rawReadingA / (typed.clampTurns ?? 1),
    powerW: ofLabel ? null : (typed.powerW ?? null),
    nameplateW: ofLabel ? (typed.powerW ?? null) : (typed.nameplateW ?? null),
    hoursPerYear:
      resolvedHours({
        useBasis: typed.useBasis ?? "entered",
        hoursPerDay: typed.hoursPerDay ?? null,
        daysPerYear: typed.daysPerYear ?? null,
        hoursPerYear: typed.hoursPerYear ?? 0,
      }) ?? 0,
  };
}
