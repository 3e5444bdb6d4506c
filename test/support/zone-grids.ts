import type { Grid } from "@/lib/trends/grid";
import type { ZoneGrids } from "@/lib/trends/zone-grids";

/** Monday 1 July 2024, 00:00 UTC. */
export const MONDAY = 1_719_792_000;

const POINTS = [
  "coolingSetpointC",
  "heatingSetpointC",
  "airflowM3ps",
  "airflowSetpointM3ps",
  "damperPct",
  "reheatValvePct",
  "dischargeAirTempC",
  "coolingStage",
  "relativeHumidityPct",
  "supplyAirTempC",
  "outdoorAirTempC",
] as const;
type OptionalPoint = (typeof POINTS)[number];

export type Instant = { zoneAirTempC: number; occupied: boolean } & Partial<Record<OptionalPoint, number>>;

/** Grids with one call an interval; a point that no call gives is missing altogether. */
export function makeZoneGrids(
  count: number,
  at: (now: { i: number; hour: number; weekday: number }) => Instant,
  stepSeconds = 900,
): ZoneGrids {
  const grid: Grid = { startUtcSeconds: MONDAY, stepSeconds, count };
  const occupied = new Uint8Array(count);
  const zoneAirTempC = new Float64Array(count);
  const points = new Map<OptionalPoint, Float64Array>();
  for (let i = 0; i < count; i++) {
    const seconds = i * stepSeconds;
    const now = at({ i, hour: (seconds % 86400) / 3600, weekday: (Math.floor(seconds / 86400) % 7) + 1 });
    occupied[i] = now.occupied ? 1 : 0;
    zoneAirTempC[i] = now.zoneAirTempC;
    for (const point of POINTS) {
      const value = now[point];
      if (value === undefined) continue;
      const values = points.get(point) ?? new Float64Array(count).fill(Number.NaN);
      values[i] = value;
      points.set(point, values);
    }
  }
  const get = (point: OptionalPoint): Float64Array | null => points.get(point) ?? null;
  return {
    grid,
    occupied,
    zoneAirTempC,
    coolingSetpointC: get("coolingSetpointC"),
    heatingSetpointC: get("heatingSetpointC"),
    airflowM3ps: get("airflowM3ps"),
    airflowSetpointM3ps: get("airflowSetpointM3ps"),
    damperPct: get("damperPct"),
    reheatValvePct: get("reheatValvePct"),
    dischargeAirTempC: get("dischargeAirTempC"),
    coolingStage: get("coolingStage"),
    relativeHumidityPct: get("relativeHumidityPct"),
    supplyAirTempC: get("supplyAirTempC"),
    outdoorAirTempC: get("outdoorAirTempC"),
  };
}
