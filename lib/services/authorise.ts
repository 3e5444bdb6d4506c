import type { Actor, Context } from "./context";
import { ServiceError } from "./errors";

/** Lets facilities people and the command line through; refuses anyone else. The first line of every facilities use-case. */
export function requireFacilities(ctx: Context): Extract<Actor, { kind: "user" | "command-line" }> {
  const { actor } = ctx;
  if (actor.kind === "user" || actor.kind === "command-line") return actor;
  throw new ServiceError("unauthenticated", "Sign in to see this page.");
}

/** Lets those through who may bring trend files and readings to a building: facilities people and its collectors. */
export function requireSender(ctx: Pick<Context, "actor">, buildingId: number): Exclude<Actor, { kind: "anonymous" }> {
  const { actor } = ctx;
  if (actor.kind === "anonymous") throw new ServiceError("unauthenticated", "Sign in, or show a collector's token.");
  if (actor.kind === "collector" && actor.buildingId !== buildingId)
    throw new ServiceError("forbidden", "This token is for another building. Use the token made on this building.");
  return actor;
}

/** Name to write beside a change. */
export function actorName(actor: Actor): string {
  return actor.kind === "anonymous" ? actor.kind : actor.name;
}
