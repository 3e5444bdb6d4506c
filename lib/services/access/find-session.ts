import { ROLES } from "@/db/schema/access";
import type { Actor, Context } from "../context";
import { getAuth } from "./auth";
import { sessionHeaders } from "./session-cookie";

export type SignedIn = { actor: Extract<Actor, { kind: "user" }>; expiresAtMs: number };

/** Who holds a session cookie, or null when it is forged, expired or revoked. */
export async function findSession(
  ctx: Pick<Context, "db" | "now">,
  cookieValue: string | undefined,
): Promise<SignedIn | null> {
  if (!cookieValue) return null;
  const headers = await sessionHeaders(ctx.db, cookieValue);
  const found = await getAuth(ctx.db).api.getSession({ headers });
  if (!found) return null;
  const expiresAtMs = found.session.expiresAt.getTime();
  if (expiresAtMs <= ctx.now) return null;
  const role = ROLES.find((each) => each === found.user.role);
  if (!role) throw new Error(`unknown role of user ${found.user.id}`);
  return { actor: { kind: "user", id: found.user.id, name: found.user.name, role }, expiresAtMs };
}
