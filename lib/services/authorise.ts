import type { Actor, Context } from "./context";
import { ServiceError } from "./errors";

/** Lets facilities people and the command line through; refuses anyone else. The first line of every facilities use-case. */
export function requireFacilities(ctx: Context): Extract<Actor, { kind: "user" | "command-line" }> {
  const { actor } = ctx;
  if (actor.kind === "user" || actor.kind === "command-line") return actor;
  throw new ServiceError("unauthenticated", "Sign in to see this page.");
}

/** Name to write beside a change. */
export function actorName(actor: Actor): string {
  if (actor.kind === "user" || actor.kind === "command-line") return actor.name;
  return actor.kind;
}
