import type { BuildingRow } from "@/db/queries/buildings";
import { type SetpointMove, setpointMoves } from "@/lib/trends/setpoint-moves";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import type { Context } from "../context";
import type { ResultKind } from "../kept/result-kind";
import { readZoneDays } from "./zone-days";

export type ZoneMove = SetpointMove & {
  zoneId: number;
  code: string;
  setting: "cooling-setpoint" | "heating-setpoint";
};

/** Active setpoints that moved and stayed, in all of the record, oldest first. */
export const SETPOINT_MOVES: ResultKind<{ moves: ZoneMove[] }> = {
  name: "setpoint-moves",
  version: 2,
  inputs: ["trends", "mapping", "zones", "building"],
  workOut: async (ctx, building) => ({ moves: await findSetpointMoves(ctx, building) }),
};

export async function findSetpointMoves(ctx: Context, building: BuildingRow): Promise<ZoneMove[]> {
  const found: ZoneMove[] = [];
  for (const setting of ["cooling-setpoint", "heating-setpoint"] as const) {
    const read = await readZoneDays(
      ctx,
      building,
      { kind: setting, of: (grids) => whileRecorded(grids, setting) },
      null,
    );
    for (const { zone, days } of read?.zones ?? [])
      found.push(...setpointMoves(days).map((move) => ({ ...move, zoneId: zone.id, code: zone.code, setting })));
  }
  return found.sort((a, b) => a.atUtcSeconds - b.atUtcSeconds);
}

/**
 * The active setpoint while the zone's air is recorded. A setpoint that is told as it changes holds its last value through
 * months without any record; what was set then nobody knows.
 */
function whileRecorded(grids: ZoneGrids, setting: ZoneMove["setting"]): Float64Array | null {
  const setpointC = setting === "cooling-setpoint" ? grids.coolingSetpointC : grids.heatingSetpointC;
  return setpointC?.map((each, i) => (Number.isNaN(grids.zoneAirTempC[i]) ? Number.NaN : each)) ?? null;
}
