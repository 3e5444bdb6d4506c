import { z } from "zod";
import { inTransaction } from "@/db/client";
import { findDevice, updateDevice } from "@/db/queries/devices";
import { deletePlugLog, updatePlugLog, updateSettingUse } from "@/db/queries/plug-logs";
import type { PlugLogFigures } from "@/lib/electrical/plug-log/plug-log-figures";
import { offLimitW } from "@/lib/electrical/plug-log/power-levels";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { actorName, requireFacilities } from "../authorise";
import type { Context } from "../context";
import { readDevice } from "../devices/read";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { deleteRawReadings } from "./raw-readings";
import { findPlugLogOrRefuse, plugLogView } from "./read";

const date = z
  .string()
  .trim()
  .refine((text) => dayNumberFromLocalDate(text) !== null, "Give a date as YYYY-MM-DD.");
const standsInput = z
  .object({ standsFrom: date, standsTo: date })
  .refine(({ standsFrom, standsTo }) => standsFrom <= standsTo, {
    path: ["standsTo"],
    message: "The season ends before it begins: give the last day of it here.",
  });

/** Says which season a log stands for. Whether its days are enough for that is worked out when it is shown. */
export function setPlugLogSeason(
  ctx: Context,
  buildingId: number,
  deviceId: number,
  logId: number,
  input: z.input<typeof standsInput>,
): void {
  requireFacilities(ctx);
  readDevice(ctx, buildingId, deviceId);
  findPlugLogOrRefuse(ctx, deviceId, logId);
  updatePlugLog(ctx.db, logId, parseInput(standsInput, input));
}

/**
 * Marks a log as reviewed and deletes its raw readings. With `takeOver` the hours and duty of the settings that were found
 * go into the register, scaled by the season's energy over the log's, and so does the longest run. Refused when the season
 * cannot be worked out.
 */
export function reviewPlugLog(
  ctx: Context,
  buildingId: number,
  deviceId: number,
  logId: number,
  { takeOver }: { takeOver: boolean },
): void {
  const actor = requireFacilities(ctx);
  readDevice(ctx, buildingId, deviceId);
  const log = plugLogView(ctx, buildingId, findPlugLogOrRefuse(ctx, deviceId, logId));
  const uses = takeOver ? usesOf(log.figures, log.season) : [];
  const note = `plug log of ${log.figures.days.length} days for ${log.standsFrom} to ${log.standsTo}`;
  inTransaction(ctx.db, (tx) => {
    if (takeOver) {
      const settings = findDevice(tx, buildingId, deviceId)?.settings ?? [];
      const kept = settings.filter((setting) => !uses.some(({ name }) => name === setting.name));
      const hours = [...kept, ...uses].reduce((sum, { hoursPerYear }) => sum + hoursPerYear, 0);
      if (hours > 8760)
        throw new ServiceError(
          "conflict",
          `With these hours the settings would be selected for ${Math.round(hours)} h a year together. Set the hours of the other settings to 0 first.`,
        );
      for (const { name, hoursPerYear, dutyFraction } of uses) {
        const setting = settings.find((each) => each.name === name);
        if (!setting)
          throw new ServiceError("conflict", `The setting ${name} is no longer on the sheet: import the log again.`);
        updateSettingUse(tx, setting.id, { hoursPerYear, dutyFraction, useBasis: "plug-logger", useNote: note });
      }
      updateDevice(tx, deviceId, { longestRunHours: log.figures.longestFullRun?.hours ?? null, updatedAtMs: ctx.now });
    }
    updatePlugLog(tx, logId, { reviewedAtMs: ctx.now, reviewedBy: actorName(actor) });
  });
  deleteRawReadings(ctx, log);
}

/** Hours a year of each setting that was found: its selected hours times the season's energy over the log's. */
export function usesOf(
  figures: PlugLogFigures,
  season: ReturnType<typeof plugLogView>["season"],
): { name: string; hoursPerYear: number; dutyFraction: number }[] {
  if (!season) throw new ServiceError("precondition", "Say first which season the log stands for.");
  if (season.status === "refused") throw new ServiceError("precondition", season.message);
  if (figures.energyKwh === 0)
    throw new ServiceError("precondition", "The log has no energy: there are no hours to take over.");
  const scale = season.energyKwh.value / figures.energyKwh;
  const limit = offLimitW(figures.states);
  return figures.states.flatMap(({ setting, powerW, selectedHours, dutyFraction }) =>
    setting && powerW > limit
      ? [{ name: setting.name, hoursPerYear: selectedHours * scale, dutyFraction: Math.min(1, dutyFraction) }]
      : [],
  );
}

/** Takes a log out of the record with its raw readings. What was taken over from it stays in the register. */
export function removePlugLog(ctx: Context, buildingId: number, deviceId: number, logId: number): void {
  requireFacilities(ctx);
  readDevice(ctx, buildingId, deviceId);
  const log = findPlugLogOrRefuse(ctx, deviceId, logId);
  deleteRawReadings(ctx, log);
  deletePlugLog(ctx.db, logId);
}
