import { z } from "zod";
import { insertVerdictNote } from "@/db/queries/verdict-notes";
import { findZone } from "@/db/queries/zones";
import { VERDICT_STANCES } from "@/lib/trends/diagnosis/verdict-stance";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { diagnoseZones } from "../zone-analysis/diagnose";
import { readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";
import { zoneDataState } from "./data-state";

const noteInput = z
  .object({
    stance: z.enum(VERDICT_STANCES, "Say whether you confirm the verdict, reject it, or only note something."),
    note: z.string().trim().max(1000, "Keep the note under 1,000 characters.").default(""),
    /** Verdict that was on the page, so that nobody speaks of another one unawares. */
    verdictSeen: z.string().optional(),
  })
  .refine(({ stance, note }) => stance === "confirmed" || note.length >= 3, {
    path: ["note"],
    message: "Say what was found on site: the next reader will ask.",
  });

export type VerdictNoteInput = z.input<typeof noteInput>;

/**
 * Keeps what someone says of a zone's present verdict, with date, name and the verdict as it stands. Refused where there is no
 * verdict yet, and where it is no longer the one that was seen. Returns the id.
 */
export async function noteVerdict(
  ctx: Context,
  buildingId: number,
  zoneId: number,
  input: VerdictNoteInput,
): Promise<number> {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const zone = findZone(ctx.db, buildingId, zoneId);
  if (!zone) throw new ServiceError("not-found", "This zone does not exist.");
  const { stance, note, verdictSeen } = parseInput(noteInput, input);
  const thresholdC = seasonThresholdC(ctx, buildingId);
  const analysis = await readBuildingAnalysis(ctx, building, thresholdC);
  const diagnosis = (await diagnoseZones(ctx, building, analysis, thresholdC)).get(zoneId);
  if (!diagnosis)
    throw new ServiceError("precondition", `Zone ${zone.code} has no verdict yet: bring in its trends first.`);
  if (verdictSeen !== undefined && verdictSeen !== diagnosis.verdict)
    throw new ServiceError("conflict", "The verdict has changed since this page was opened. Look at it again first.");
  return insertVerdictNote(ctx.db, {
    buildingId,
    zoneId,
    stance,
    note,
    verdict: diagnosis.verdict,
    causes: diagnosis.causes.map(({ code }) => code),
    dataState: await zoneDataState(ctx, building, zone),
    enteredBy: actorName(actor),
    enteredAtMs: ctx.now,
  }).id;
}
