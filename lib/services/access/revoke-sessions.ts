import { deleteSessionsOf } from "@/db/queries/access";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** Signs a user out everywhere. People may do it to themselves, administrators and the command line to anyone. */
export function revokeSessions(ctx: Context, userId: string): { sessionsEnded: number } {
  const actor = requireFacilities(ctx);
  const allowed = actor.kind === "command-line" || actor.role === "administrator" || actor.id === userId;
  if (!allowed) throw new ServiceError("forbidden", "Only an administrator may sign someone else out.");
  return { sessionsEnded: deleteSessionsOf(ctx.db, userId) };
}
