import { countUsers } from "@/db/queries/access";
import type { Context } from "../context";

/** Whether anyone can sign in yet: the sign-in page says how to make the first administrator when nobody can. */
export function hasUsers(ctx: Pick<Context, "db">): boolean {
  return countUsers(ctx.db) > 0;
}
