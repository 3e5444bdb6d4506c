import { stepHours } from "./grid";
import { medianInPlace } from "./median-in-place";
import type { ZoneGrids } from "./zone-grids";

/** A zone with what places it beside its neighbours: few arrays, so that a building's year fits. All zones must be on one grid. */
export type GroupedZone = {
  zoneId: number;
  floor: string;
  grids: Pick<ZoneGrids, "grid" | "occupied" | "zoneAirTempC" | "airflowM3ps">;
  minimumAirflowM3ps: number | null;
};

/** How a zone's reading stands against its neighbours'. */
export type GroupOffset = {
  zoneId: number;
  group: "floor" | "building";
  neighbours: number;
  /** Median of (own reading - median of the neighbours) while all float unoccupied [K], and the hours compared. */
  floatOffsetK: number | null;
  floatHours: number;
  /** The same in occupied hours. */
  occupiedOffsetK: number | null;
};

/** A median of fewer neighbours than this is one room's habit. Judgement, no source. */
const LEAST_NEIGHBOURS = 3;
/** Hours after occupancy before a zone counts as floating: the day's setpoint and sun must fade. Judgement, no source. */
const FLOAT_AFTER_SECONDS = 3 * 3600;
/** Hours of comparison below which no offset is given. Judgement, no source. */
const LEAST_HOURS = 20;

/**
 * Offsets of every zone of a building from the median of its neighbours: those of its floor when there are at least
 * three, all others otherwise. In unoccupied hours with little airflow the zones of one floor drift alike, so a lasting
 * offset speaks of the sensor or its place (reference D7, row 1; a calibrated logger decides). One interval an hour is compared.
 */
export function groupOffsets(zones: readonly GroupedZone[]): GroupOffset[] {
  const floors = new Map<string, GroupedZone[]>();
  for (const zone of zones) floors.set(zone.floor, [...(floors.get(zone.floor) ?? []), zone]);
  const floating = new Map(zones.map((zone) => [zone.zoneId, floatingMask(zone)]));
  const found: GroupOffset[] = [];
  const compare = (
    members: readonly GroupedZone[],
    group: GroupOffset["group"],
    wanted: readonly GroupedZone[],
  ): void => {
    const float = medianOffsets(members, (zone, i) => floating.get(zone.zoneId)?.[i] === 1);
    const busy = medianOffsets(members, (zone, i) => zone.grids.occupied[i] === 1);
    for (const zone of wanted) {
      const at = members.indexOf(zone);
      found.push({
        zoneId: zone.zoneId,
        group,
        neighbours: members.length - 1,
        floatOffsetK: float[at]?.offsetK ?? null,
        floatHours: float[at]?.hours ?? 0,
        occupiedOffsetK: busy[at]?.offsetK ?? null,
      });
    }
  };
  const lonely: GroupedZone[] = [];
  for (const members of floors.values()) {
    if (members.length > LEAST_NEIGHBOURS) compare(members, "floor", members);
    else lonely.push(...members);
  }
  if (lonely.length > 0) compare(zones, "building", lonely);
  return found;
}

/** 1 where the zone has been unoccupied for three hours and its airflow is under half the minimum (or not trended). */
function floatingMask(zone: GroupedZone): Uint8Array {
  const { occupied, airflowM3ps, grid } = zone.grids;
  const mask = new Uint8Array(grid.count);
  const wait = FLOAT_AFTER_SECONDS / grid.stepSeconds;
  let since = 0;
  for (let i = 0; i < grid.count; i++) {
    since = occupied[i] === 1 ? 0 : since + 1;
    const airflow = airflowM3ps ? (airflowM3ps[i] as number) : 0;
    const little = zone.minimumAirflowM3ps === null ? !(airflow > 0) : !(airflow > 0.5 * zone.minimumAirflowM3ps);
    if (since > wait && little) mask[i] = 1;
  }
  return mask;
}

function medianOffsets(
  members: readonly GroupedZone[],
  counts: (zone: GroupedZone, i: number) => boolean,
): ({ offsetK: number; hours: number } | null)[] {
  const grid = members[0]?.grids.grid;
  if (!grid) return [];
  const stride = Math.max(1, Math.round(3600 / grid.stepSeconds));
  const differences: number[][] = members.map(() => []);
  for (let i = 0; i < grid.count; i += stride) {
    const present: { at: number; value: number }[] = [];
    members.forEach((zone, at) => {
      const value = zone.grids.zoneAirTempC[i] as number;
      if (!Number.isNaN(value) && counts(zone, i)) present.push({ at, value });
    });
    if (present.length <= LEAST_NEIGHBOURS) continue;
    present.sort((a, b) => a.value - b.value);
    present.forEach(({ at, value }, rank) => {
      differences[at]?.push(value - medianOfOthers(present, rank));
    });
  }
  const hoursEach = stepHours(grid) * stride;
  return differences.map((each) =>
    each.length * hoursEach < LEAST_HOURS
      ? null
      : { offsetK: medianInPlace(Float64Array.from(each)), hours: each.length * hoursEach },
  );
}

/** Median of ascending values without the one at `rank`. */
function medianOfOthers(ascending: readonly { value: number }[], rank: number): number {
  const others = ascending.length - 1;
  const other = (k: number): number => (ascending[k < rank ? k : k + 1] as { value: number }).value;
  return others % 2 === 1 ? other((others - 1) / 2) : (other(others / 2 - 1) + other(others / 2)) / 2;
}
