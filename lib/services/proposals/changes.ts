import { z } from "zod";
import { insertSetpointChange, listSetpointChanges, type SetpointChangeRow } from "@/db/queries/setpoint-changes";
import { findZone, listZones } from "@/db/queries/zones";
import { CHANGE_DECISIONS } from "@/lib/proposals/setpoint-change";
import { driftBack, type SetpointMove } from "@/lib/trends/setpoint-moves";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { readKept } from "../kept/read-kept";
import { parseInput } from "../parse";
import { findProposalOrRefuse } from "./find";
import { SETPOINT_MOVES, type ZoneMove } from "./setpoint-moves";

/** A change on record, and the move that took it back, where one did. */
export type LoggedChange = SetpointChangeRow & { code: string; wentBack: SetpointMove | null };

/** Moves that nobody has decided on, and what was confirmed or rejected, latest first. */
export type ChangeLog = { offered: ZoneMove[]; changes: LoggedChange[] };

/** `moves` are those found in the trends. */
export function readChangeLog(ctx: Context, buildingId: number, moves: readonly ZoneMove[]): ChangeLog {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const codes = new Map(listZones(ctx.db, buildingId).map((each) => [each.id, each.code]));
  const rows = listSetpointChanges(ctx.db, buildingId);
  const decided = new Set(rows.map(keyOf));
  const changes = rows.map((row) => {
    const own = moves.filter((each) => each.zoneId === row.zoneId && each.setting === row.setting);
    const change = { atUtcSeconds: row.atUtcSeconds, fromC: row.fromValue, toC: row.toValue };
    return {
      ...row,
      code: codes.get(row.zoneId) ?? "",
      wentBack: row.decision === "confirmed" ? driftBack(change, own) : null,
    };
  });
  return { offered: moves.filter((each) => !decided.has(keyOf(each))).toReversed(), changes };
}

const keyOf = (of: { zoneId: number; setting: string; atUtcSeconds: number }): string =>
  `${of.zoneId}/${of.setting}/${of.atUtcSeconds}`;

const decisionInput = z.object({
  zoneId: z.number().int(),
  setting: z.enum(["cooling-setpoint", "heating-setpoint"]),
  atUtcSeconds: z.number().int(),
  decision: z.enum(CHANGE_DECISIONS, "Say whether the setpoint was really changed."),
  proposalId: z.number().int().nullable(),
  changedBy: z.string().trim().max(120, "Keep the name under 120 characters."),
  reason: z.string().trim().max(1000, "Keep the reason under 1,000 characters."),
});

export type ChangeDecisionInput = z.input<typeof decisionInput>;

/** Keeps what someone says of a move that was found. Values and date are those of the trends, never of a form. */
export async function decideChange(ctx: Context, buildingId: number, input: ChangeDecisionInput): Promise<number> {
  const by = actorName(requireFacilities(ctx));
  findBuildingOrRefuse(ctx, buildingId);
  const parsed = parseInput(decisionInput, input);
  if (!findZone(ctx.db, buildingId, parsed.zoneId)) throw new ServiceError("not-found", "This zone does not exist.");
  const { result } = await readKept(ctx, buildingId, SETPOINT_MOVES);
  const move = result?.moves.find((each) => keyOf(each) === keyOf(parsed));
  if (!move)
    throw new ServiceError(
      "conflict",
      "The trends no longer show this change: load the page again to see what they show.",
    );
  if (listSetpointChanges(ctx.db, buildingId).some((each) => keyOf(each) === keyOf(parsed)))
    throw new ServiceError("conflict", "This change was decided on already.");
  if (parsed.proposalId !== null) findProposalOrRefuse(ctx, buildingId, parsed.proposalId);
  const { zoneId, setting, atUtcSeconds, decision, proposalId, changedBy, reason } = parsed;
  return insertSetpointChange(ctx.db, {
    buildingId,
    zoneId,
    proposalId,
    setting,
    origin: "detected",
    decision,
    atUtcSeconds,
    fromValue: move.fromC,
    toValue: move.toC,
    changedBy,
    reason,
    enteredBy: by,
    enteredAtMs: ctx.now,
  }).id;
}
