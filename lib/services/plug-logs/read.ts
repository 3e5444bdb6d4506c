import { findOccupiedHours } from "@/db/queries/buildings";
import { findPlugLog, listPlugLogs, type PlugLogRow } from "@/db/queries/plug-logs";
import { type SeasonEstimate, seasonEstimate } from "@/lib/electrical/plug-log/season-estimate";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { type DeviceView, readDevice } from "../devices/read";
import { ServiceError } from "../errors";
import { plugLogRawDays } from "./raw-readings";

/** A log with the season that it stands for worked out; null while nobody has said which. */
export type PlugLogView = PlugLogRow & { season: SeasonEstimate | null };

export function readPlugLogs(
  ctx: Context,
  buildingId: number,
  deviceId: number,
): { device: DeviceView; logs: PlugLogRow[]; rawDays: number } {
  requireFacilities(ctx);
  const device = readDevice(ctx, buildingId, deviceId);
  return { device, logs: listPlugLogs(ctx.db, deviceId), rawDays: plugLogRawDays(ctx, buildingId) };
}

export function readPlugLogView(
  ctx: Context,
  buildingId: number,
  deviceId: number,
  logId: number,
): { device: DeviceView; log: PlugLogView; rawDays: number } {
  const device = readDevice(ctx, buildingId, deviceId);
  return {
    device,
    log: plugLogView(ctx, buildingId, findPlugLogOrRefuse(ctx, deviceId, logId)),
    rawDays: plugLogRawDays(ctx, buildingId),
  };
}

export function plugLogView(ctx: Context, buildingId: number, log: PlugLogRow): PlugLogView {
  const { standsFrom, standsTo, figures } = log;
  if (standsFrom === null || standsTo === null) return { ...log, season: null };
  const hours = findOccupiedHours(ctx.db, buildingId);
  return { ...log, season: seasonEstimate(figures.days, { from: standsFrom, to: standsTo }, hours) };
}

/** Checks no right: a use-case has done so before. */
export function findPlugLogOrRefuse(ctx: Context, deviceId: number, logId: number): PlugLogRow {
  const log = findPlugLog(ctx.db, deviceId, logId);
  if (!log) throw new ServiceError("not-found", "This plug log does not exist.");
  return log;
}
