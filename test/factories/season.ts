import { upsertPoint } from "@/db/queries/points";
import { findBuildingOrRefuse } from "@/lib/services/buildings/find";
import { findSetpointMoves } from "@/lib/services/proposals/setpoint-moves";
import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";
import type { PointKind } from "@/lib/trends/point-kind";
import { smallOffice } from "./office";
import { bringWeather } from "./office-records";

const START = Date.UTC(2025, 4, 5, 5) / 1000;
const STEPS_A_DAY = 96;

type Season = {
  /** Days from the start on which the setpoint goes to a value [°C]. */
  setpoints: readonly [day: number, valueC: number][];
  /** Zone air over the setpoint's value of the day [K]; 0 follows it. */
  followsC?: number;
  days: number;
};

/** A season of an office whose zone air follows its setpoint, or stays at `followsC` whatever the setpoint is. */
export async function season({ setpoints, followsC, days }: Season) {
  const office = smallOffice({ temperatureUnit: "C" });
  bringWeather(office);
  const { ctx, buildingId, zoneId } = office;
  const random = seededRandom(9);
  const at = (day: number): number => setpoints.findLast(([from]) => from <= day)?.[1] ?? 0;
  const count = days * STEPS_A_DAY;
  const air = new Float64Array(days);
  const outdoor = new Float64Array(days);
  for (let day = 0; day < days; day++) {
    const [one, other] = normalPair(random);
    outdoor[day] = 25 + 3 * other;
    air[day] = (followsC ?? at(day)) + 0.15 * one;
  }
  const trends: [PointKind, (day: number) => number, number | null][] = [
    ["zone-air-temp", (day) => air[day] as number, zoneId],
    ["cooling-setpoint", at, zoneId],
    ["airflow", () => 0.3, zoneId],
    ["outdoor-air-temp", (day) => outdoor[day] as number, null],
  ];
  const slices = trends.map(([kind, valueOn, zone]) => ({
    series: upsertPoint(ctx.db, {
      buildingId,
      externalName: kind,
      kind,
      zoneId: zone,
      fileUnit: "degC",
      sampling: "interval",
    }).id,
    ts: Float64Array.from({ length: count }, (_, i) => START + i * 900),
    v: Int32Array.from({ length: count }, (_, i) => Math.round(1000 * valueOn(Math.floor(i / STEPS_A_DAY)))),
    decimals: 3,
  }));
  await ctx.trends.write(slices, 1);
  const moves = () => findSetpointMoves(ctx, findBuildingOrRefuse(ctx, buildingId));
  return { ...office, moves };
}
