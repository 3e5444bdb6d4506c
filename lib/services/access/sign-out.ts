import type { Context } from "../context";
import { getAuth } from "./auth";
import { sessionHeaders } from "./session-cookie";

/** Ends the session of a cookie. A cookie that is no session any more is no fault. */
export async function signOut(ctx: Pick<Context, "db">, cookieValue: string | undefined): Promise<void> {
  if (!cookieValue) return;
  await getAuth(ctx.db).api.signOut({ headers: await sessionHeaders(ctx.db, cookieValue) });
}
