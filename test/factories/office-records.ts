import { upsertPoint } from "@/db/queries/points";
import { importWeather } from "@/lib/services/weather/import";
import type { PointKind } from "@/lib/trends/point-kind";
import { bytesOf, epwText, wholeYear } from "../lib/importers/weather/weather-text";
import type { smallOffice } from "./office";

type Office = Pick<ReturnType<typeof smallOffice>, "ctx" | "buildingId" | "zoneId">;

/** Warm in the day and warmer in summer: long stretches above any supply air temperature. */
export function bringWeather({ ctx, buildingId }: Pick<Office, "ctx" | "buildingId">): void {
  const rows = wholeYear().map((row) => ({
    ...row,
    dryBulb: (
      10 +
      12 * Math.sin(((row.month - 4) / 6) * Math.PI) +
      6 * Math.sin(((row.hour - 9) / 12) * Math.PI)
    ).toFixed(1),
  }));
  importWeather(ctx, buildingId, { name: "made.epw", bytes: bytesOf(epwText(rows)) });
}

/** Four weeks of June in zone 2-14: 21.5 °C at its minimum airflow, setpoint 21.5 °C, no reheat. */
export async function bringTrends({ ctx, buildingId, zoneId }: Office): Promise<void> {
  const count = 4 * 7 * 96;
  const start = Date.UTC(2025, 5, 2) / 1000;
  const kinds: [PointKind, number, number, number | null][] = [
    ["zone-air-temp", 21_500, 3, zoneId],
    ["cooling-setpoint", 21_500, 3, zoneId],
    ["airflow", 12_000, 5, zoneId],
    ["reheat-valve", 0, 1, zoneId],
    ["outdoor-air-temp", 27_000, 3, null],
  ];
  const slices = kinds.map(([kind, value, decimals, zone]) => ({
    series: upsertPoint(ctx.db, {
      buildingId,
      externalName: `${kind}`,
      kind,
      zoneId: zone,
      fileUnit: "degC",
      sampling: "interval",
    }).id,
    ts: Float64Array.from({ length: count }, (_, i) => start + i * 900),
    v: new Int32Array(count).fill(value),
    decimals,
  }));
  await ctx.trends.write(slices, 1);
}

/** Zone air of the same four weeks in one zone, by itself, at one temperature [thousandths of °C]. */
export async function bringZoneAir(
  { ctx, buildingId }: Pick<Office, "ctx" | "buildingId">,
  zoneId: number,
  milliC = 22_000,
): Promise<void> {
  const count = 4 * 7 * 96;
  const start = Date.UTC(2025, 5, 2) / 1000;
  const point = { buildingId, kind: "zone-air-temp" as const, zoneId, fileUnit: "degC", sampling: "interval" as const };
  const series = upsertPoint(ctx.db, { ...point, externalName: `air of ${zoneId}` }).id;
  const ts = Float64Array.from({ length: count }, (_, i) => start + i * 900);
  await ctx.trends.write([{ series, ts, v: new Int32Array(count).fill(milliC), decimals: 3 }], milliC);
}
