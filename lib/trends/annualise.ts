import type { Finding } from "@/lib/findings/finding";
import type { AnnualBin } from "./outdoor-bins";
import type { AnnualExposure, OutdoorBin, ZoneExposure } from "./zone-exposure";
import { OCCUPIED_STATES, type OccupiedState } from "./zone-state";

/** A bin needs this many hours of record to speak for itself (reference Q8). */
export const LEAST_BIN_HOURS = 20;
/** Extrapolated share of the year above which the result carries a caution. Judgement, no source. */
const EXTRAPOLATED_CAUTION = 0.25;

export type AnnualResult =
  | { status: "ok"; annual: AnnualExposure; findings: Finding[] }
  /** The record is too short or holds no cooling season: no annual figure follows from it. */
  | { status: "not-enough-record"; findings: Finding[] };

/**
 * Carries an exposure to the occupied cooling-season hours of a weather year (reference Q8). Each outdoor bin takes
 * the state shares and degree-hours an hour of the same bin in the record; a bin with under 20 recorded hours those of
 * the nearest bin that has them (of two as near, the one with more record), and counts as extrapolated. Without an outdoor
 * record, or with no bin of 20 hours, the means of the whole record stand for the year (`season-mean`, all extrapolated
 * in the second case).
 */
export function annualise(exposure: ZoneExposure, year: readonly AnnualBin[]): AnnualResult {
  const stopping = exposure.findings.filter((each) => each.severity === "disqualifies");
  if (stopping.length > 0 || exposure.coolingSeasonHours === 0)
    return { status: "not-enough-record", findings: stopping };

  const coolingSeasonHours = year.reduce((sum, each) => sum + each.hours, 0);
  const recorded = (exposure.byOutdoorBin ?? []).map((bin) => ({ bin, hours: binHours(bin) }));
  const usable = recorded.filter((each) => each.hours >= LEAST_BIN_HOURS);
  const annual: AnnualExposure = {
    coolingSeasonHours,
    byState: emptyStates(),
    extrapolatedFraction: 0,
    method: usable.length > 0 ? "outdoor-bins" : "season-mean",
  };

  if (usable.length === 0) {
    const scale = coolingSeasonHours / exposure.coolingSeasonHours;
    for (const state of OCCUPIED_STATES) add(annual, state, exposure.byState[state], scale);
    annual.extrapolatedFraction = exposure.byOutdoorBin ? 1 : 0;
  } else {
    let extrapolatedHours = 0;
    for (const each of year) {
      const nearest = usable.reduce((best, next) => (nearer(next, best, each.lowC) ? next : best));
      if (nearest.bin.lowC !== each.lowC) extrapolatedHours += each.hours;
      const scale = each.hours / nearest.hours;
      for (const state of OCCUPIED_STATES) add(annual, state, nearest.bin.byState[state], scale);
    }
    annual.extrapolatedFraction = coolingSeasonHours > 0 ? extrapolatedHours / coolingSeasonHours : 0;
  }
  return { status: "ok", annual, findings: annualFindings(annual) };
}

/**
 * Annual hours by state in each outdoor bin of the year, in its order: what `annualise` adds up. Empty where no annual figure
 * follows from the record.
 */
export function annualHoursByBin(exposure: ZoneExposure, year: readonly AnnualBin[]): Record<OccupiedState, number>[] {
  if (annualise(exposure, year).status !== "ok") return [];
  return year.map((bin) => {
    const only = annualise(exposure, [bin]);
    const states = only.status === "ok" ? only.annual.byState : emptyStates();
    return Object.fromEntries(OCCUPIED_STATES.map((state) => [state, states[state].hours])) as Record<
      OccupiedState,
      number
    >;
  });
}

type RecordedBin = { bin: OutdoorBin; hours: number };

function nearer(one: RecordedBin, other: RecordedBin, lowC: number): boolean {
  const gain = Math.abs(other.bin.lowC - lowC) - Math.abs(one.bin.lowC - lowC);
  return gain > 0 || (gain === 0 && one.hours > other.hours);
}

const binHours = (bin: OutdoorBin): number => OCCUPIED_STATES.reduce((sum, state) => sum + bin.byState[state].hours, 0);

function emptyStates(): AnnualExposure["byState"] {
  return Object.fromEntries(
    OCCUPIED_STATES.map((state) => [state, { hours: 0, overcoolingKh: 0 }]),
  ) as AnnualExposure["byState"];
}

function add(
  annual: AnnualExposure,
  state: OccupiedState,
  part: { hours: number; overcoolingKh: number },
  scale: number,
): void {
  annual.byState[state].hours += part.hours * scale;
  annual.byState[state].overcoolingKh += part.overcoolingKh * scale;
}

function annualFindings(annual: AnnualExposure): Finding[] {
  if (annual.method === "season-mean") return [{ code: "annual-by-season-mean", severity: "caution", evidence: {} }];
  if (annual.extrapolatedFraction <= EXTRAPOLATED_CAUTION) return [];
  return [
    {
      code: "weather-not-covered",
      severity: "caution",
      evidence: { extrapolatedPct: annual.extrapolatedFraction * 100, coolingSeasonHours: annual.coolingSeasonHours },
    },
  ];
}
