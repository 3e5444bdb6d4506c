import { findOccupiedHours } from "@/db/queries/buildings";
import { findPlugLog, listPlugLogs, type PlugLogRow } from "@/db/queries/plug-logs";
import { isWhole } from "@/lib/electrical/plug-log/log-days";
import {
  dayWorking,
  logEnergyWorking,
  outsideWorking,
  seasonWorking,
  stateEnergyWorking,
} from "@/lib/electrical/plug-log/plug-log-working";
import { type SeasonEstimate, seasonEstimate } from "@/lib/electrical/plug-log/season-estimate";
import { localDateAt } from "@/lib/time/local-date";
import type { Working } from "@/lib/working/working";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { type DeviceView, readDevice } from "../devices/read";
import { ServiceError } from "../errors";
import { plugLogRawDays } from "./raw-readings";

/**
 * A log with the season that it stands for worked out (null while nobody has said which), how many whole days it has, and
 * the workings of its figures.
 */
export type PlugLogView = PlugLogRow & {
  season: SeasonEstimate | null;
  wholeDays: number;
  workings: { energy: Working; outside: Working; states: Working[]; days: Working[]; season: Working | null };
};

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
  const { figures, fileName } = log;
  const season = seasonOf(ctx, buildingId, log);
  return {
    ...log,
    season,
    wholeDays: figures.days.filter(isWhole).length,
    workings: {
      energy: logEnergyWorking(figures, fileName),
      outside: outsideWorking(figures, fileName),
      days: figures.days.map((day) => dayWorking(day, fileName)),
      states: figures.states.map((state) => stateEnergyWorking(state, levelName(state), fileName)),
      season: season?.status === "ok" ? seasonWorking(season, fileName) : null,
    },
  };
}

/** A level by its setting, or by its watts where it has none. */
export const levelName = ({ setting, powerW }: PlugLogRow["figures"]["states"][number]): string =>
  setting ? setting.name.replaceAll("-", " ") : powerW < 0.5 ? "off" : `${Number(powerW.toPrecision(3))} W`;

function seasonOf(ctx: Context, buildingId: number, log: PlugLogRow): SeasonEstimate | null {
  const { standsFrom, standsTo, figures, fromMs, toMs } = log;
  if (standsFrom === null || standsTo === null) return null;
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const span = { from: localDateAt(fromMs, timeZone), to: localDateAt(toMs - 1, timeZone) };
  const hours = findOccupiedHours(ctx.db, buildingId);
  return seasonEstimate(figures.days, { from: standsFrom, to: standsTo }, hours, span);
}

/** Checks no right: a use-case has done so before. */
export function findPlugLogOrRefuse(ctx: Context, deviceId: number, logId: number): PlugLogRow {
  const log = findPlugLog(ctx.db, deviceId, logId);
  if (!log) throw new ServiceError("not-found", "This plug log does not exist.");
  return log;
}
