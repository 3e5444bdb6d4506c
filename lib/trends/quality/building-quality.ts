import type { Finding } from "@/lib/findings/finding";
import type { TrendPresence } from "../diagnosis/trend-presence";
import { QUARTERS } from "./daily-profile";
import { isShifted, profileLag } from "./profile-lag";
import { hoursOf, type Stretch } from "./quality-point";
import { othersMoved, STUCK_CHANGE_HOURS, type StuckRun } from "./stuck-runs";
import { isSameEvent, type SharedGap } from "./zone-gaps";
import { gapFinding, type PointCover, type ZoneQualityParts } from "./zone-quality";

/** Gaps of a zone that are named one by one; the rest stand in the calendar. */
const GAPS_NAMED = 3;
/** Share of the zones that must have a gap at one time for it to be the building's, of at least this many zones. Judgement, no source. */
const BUILDING_SHARE = 0.9;
const LEAST_ZONES = 3;
/** A clock that differs from the others' by less than this is not named [min]. Judgement, no source. */
const LEAST_SHIFT_MINUTES = 45;

/** One zone's parts with its zone air by the hour (NaN where unknown), for holding it against its neighbours. */
export type LookedOverZone = { zoneId: number; parts: ZoneQualityParts; hourlyAirC: Float32Array };

/** Plain data, fit to be kept. */
export type ZoneQuality = { zoneId: number; points: PointCover[]; presence: TrendPresence; findings: Finding[] };
export type BuildingQuality = { zones: ZoneQuality[]; findings: Finding[] };

/**
 * What the records of a building's zones say of their quality once they are held against each other: gaps that all have are
 * the building's, a sensor is stuck where others move, and a clock is off where the others' schedules agree.
 * `hoursFrom` is the instant of the first hourly value.
 */
export function buildingQuality(zones: readonly LookedOverZone[], hoursFrom: number): BuildingQuality {
  const shared = buildingGaps(zones);
  return {
    findings: shared.map((gap) => gapFinding(gap, "building")),
    zones: zones.map((zone) => ({
      zoneId: zone.zoneId,
      points: zone.parts.points,
      presence: zone.parts.presence,
      findings: [
        ...zone.parts.gaps
          .filter((gap) => !shared.some((each) => isSameEvent(each, gap)))
          .slice(0, GAPS_NAMED)
          .map((gap) => gapFinding(gap, "zone")),
        ...stuckFindings(zone, zones, hoursFrom),
        ...zone.parts.findings,
        ...shiftFindings(zone, zones),
      ],
    })),
  };
}

function buildingGaps(zones: readonly LookedOverZone[]): SharedGap[] {
  const withRecord = zones.filter((zone) => zone.parts.points.length > 0);
  const [first] = withRecord;
  if (!first || withRecord.length < LEAST_ZONES) return [];
  const candidates = withRecord.slice(0, LEAST_ZONES).flatMap((zone) => zone.parts.gaps);
  const found: SharedGap[] = [];
  for (const gap of candidates) {
    if (found.some((each) => isSameEvent(each, gap))) continue;
    const having = withRecord.filter((zone) => zone.parts.gaps.some((each) => isSameEvent(each, gap)));
    if (having.length >= BUILDING_SHARE * withRecord.length) found.push(gap);
  }
  return found;
}

function stuckFindings(zone: LookedOverZone, zones: readonly LookedOverZone[], hoursFrom: number): Finding[] {
  const findings: Finding[] = [];
  for (const { kind, ownStepK, runs } of zone.parts.unchanged) {
    const stuck = runs.filter((run) => {
      const moved = othersMoved(rangesOfOthers(zone, zones, run, hoursFrom), ownStepK);
      return moved ?? hoursOf(run) >= STUCK_CHANGE_HOURS;
    });
    const [longest] = stuck;
    if (!longest) continue;
    findings.push({
      code: "sensor-stuck",
      severity: "caution",
      evidence: {
        point: kind,
        fromUtcSeconds: longest.fromUtcSeconds,
        toUtcSeconds: longest.toUtcSeconds,
        hours: hoursOf(longest),
        valueC: longest.value,
        times: stuck.length,
        compared: othersMoved(rangesOfOthers(zone, zones, longest, hoursFrom), ownStepK) !== null,
        totalHours: stuck.reduce((sum: number, run: StuckRun) => sum + hoursOf(run), 0),
      },
    });
  }
  return findings;
}

function rangesOfOthers(
  zone: LookedOverZone,
  zones: readonly LookedOverZone[],
  run: Stretch,
  hoursFrom: number,
): number[] {
  const from = Math.max(0, Math.ceil((run.fromUtcSeconds - hoursFrom) / 3600));
  const until = Math.floor((run.toUtcSeconds - hoursFrom) / 3600);
  return zones.flatMap((other) => {
    if (other === zone) return [];
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    for (const each of other.hourlyAirC.subarray(from, until)) {
      if (each < lowest) lowest = each;
      if (each > highest) highest = each;
    }
    return highest >= lowest ? highest - lowest : [];
  });
}

function shiftFindings(zone: LookedOverZone, zones: readonly LookedOverZone[]): Finding[] {
  const own = zone.parts.schedule;
  const others = zones.flatMap(({ parts }) =>
    parts !== zone.parts && own && parts.schedule?.kind === own.kind ? parts.schedule.profile.values : [],
  );
  if (!own || others.length < LEAST_ZONES) return [];
  const lag = profileLag(medianProfile(others), own.profile.values);
  if (!lag || !isShifted(lag, LEAST_SHIFT_MINUTES)) return [];
  return [{ code: "clock-off", severity: "caution", evidence: { point: own.kind, others: others.length, ...lag } }];
}

/** Quarter by quarter the middle of the profiles, each taken relative to its own mean so that large boxes do not lead. */
function medianProfile(profiles: readonly Float64Array[]): Float64Array {
  const means = profiles.map((profile) => {
    const known = profile.filter((each) => !Number.isNaN(each));
    return known.reduce((sum, each) => sum + each, 0) / Math.max(1, known.length) || 1;
  });
  return Float64Array.from({ length: QUARTERS }, (_, k) => {
    const here = profiles
      .map((profile, at) => (profile[k] as number) / (means[at] as number))
      .filter((each) => !Number.isNaN(each))
      .sort((a, b) => a - b);
    return here[here.length >> 1] ?? Number.NaN;
  });
}
