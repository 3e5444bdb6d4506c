import { PREFERENCE_OF_WISH, voteOfWord } from "@/lib/comfort-reports/vote-words";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { logComfortReport } from "./log";

/** A report as it is typed on a command line; only the vote has to be given. */
export type TypedReport = {
  zone?: string;
  desk?: string;
  vote?: string;
  wish?: string;
  /** ISO 8601 with its offset; the present moment where it is left out. */
  at?: string;
  note?: string;
};

/** Puts a report on record from words. Returns its id. Refuses words that are not of the scale, and times without an offset. */
export function logReportInWords(ctx: Context, buildingId: number, typed: TypedReport): number {
  const refuse = (field: string, message: string) => new ServiceError("invalid", message, { [field]: message });
  const thermalSensation = voteOfWord(typed.vote ?? "");
  if (thermalSensation === null)
    throw refuse(
      "vote",
      "Give the vote as a number from -3 (cold) to 3 (hot), or as a word of the scale such as cool.",
    );
  const usual = thermalSensation < 0 ? "warmer" : thermalSensation > 0 ? "cooler" : "no-change";
  const preference = PREFERENCE_OF_WISH.get(typed.wish ?? usual);
  if (preference === undefined) throw refuse("wish", "Give the wish as warmer, cooler or no-change.");
  const reportedAtMs = typed.at === undefined ? null : Date.parse(typed.at);
  if (Number.isNaN(reportedAtMs) || (typed.at !== undefined && !/(Z|[+-]\d\d:\d\d)$/.test(typed.at)))
    throw refuse("at", "Give the time with its offset, for example 2025-07-01T10:15:00-04:00.");
  const { zone: zoneCode, desk: deskCode, note } = typed;
  const said = { thermalSensation, preference, note, reportedAtMs };
  return logComfortReport(ctx, buildingId, { ...said, zoneCode, deskCode, origin: "command-line" });
}
