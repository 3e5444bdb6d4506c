import { inTransaction } from "@/db/client";
import { upsertPoint } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import type { PointKind } from "@/lib/trends/point-kind";
import type { TrendSlice } from "@/lib/trends/trend-store";
import type { OpenContext } from "./data-folder";
import { MISSING, OfficeTrends, START_UTC_SECONDS, STEP_SECONDS } from "./office-trends";

/** Points of a zone of the campus; the first three in the order of `OfficeTrends`. */
const KINDS = ["zone-air-temp", "cooling-setpoint", "airflow", "damper-position"] as const satisfies PointKind[];
const DECIMALS = [3, 3, 5, 1] as const;

const CFM_TO_HUNDRED_THOUSANDTHS_M3PS = 47.19474432;
const LARGEST_CFM = 380;

/** Four points for every zone of a building; ids by zone and kind. */
export function makeCampusPoints(ctx: OpenContext, buildingId: number): number[][] {
  const zones = listZones(ctx.db, buildingId);
  return inTransaction(ctx.db, (tx) =>
    zones.map((zone) =>
      KINDS.map(
        (kind) =>
          upsertPoint(tx, {
            buildingId,
            externalName: `${zone.code} ${kind}`,
            kind,
            zoneId: zone.id,
            fileUnit: kind === "airflow" ? "cfm" : kind === "damper-position" ? "percent" : "degF",
            sampling: "interval",
          }).id,
      ),
    ),
  );
}

/** The samples of those points, zone by zone, as an importer would hand them to the store. */
export function* campusSlices(points: number[][], days: number): Generator<TrendSlice> {
  const count = (days * 86_400) / STEP_SECONDS;
  for (const [zone, ids] of points.entries()) {
    const office = new OfficeTrends(1, zone + 1);
    const ts = KINDS.map(() => new Float64Array(count));
    const v = KINDS.map(() => new Int32Array(count));
    const kept = KINDS.map(() => 0);
    for (let i = 0; i < count; i++) {
      office.next((i % 96) / 4);
      if (office.silent) continue;
      for (let kind = 0; kind < KINDS.length; kind++) {
        const value = office.values[Math.min(kind, 2)] as number;
        if (value === MISSING) continue;
        const at = kept[kind] as number;
        (ts[kind] as Float64Array)[at] = START_UTC_SECONDS + i * STEP_SECONDS;
        (v[kind] as Int32Array)[at] = scaled(value, kind);
        kept[kind] = at + 1;
      }
    }
    for (const [kind, series] of ids.entries())
      yield {
        series,
        ts: (ts[kind] as Float64Array).subarray(0, kept[kind]),
        v: (v[kind] as Int32Array).subarray(0, kept[kind]),
        decimals: DECIMALS[kind] as number,
      };
  }
}

/** A reading of `OfficeTrends` in the unit and decimals that its kind is kept in. */
function scaled(value: number, kind: number): number {
  if (kind < 2) return Math.round(((value / 10 - 32) / 1.8) * 1000);
  if (kind === 2) return Math.round(value * CFM_TO_HUNDRED_THOUSANDTHS_M3PS);
  return Math.round((1000 * value) / LARGEST_CFM);
}
