import type { Context } from "../context";
import { ServiceError } from "../errors";

/** Passwords are made and replaced only by someone who can run commands where the data lies. */
export function requireCommandLine(ctx: Pick<Context, "actor">): void {
  if (ctx.actor.kind !== "command-line") throw new ServiceError("forbidden", "Do this from the command line.");
}
