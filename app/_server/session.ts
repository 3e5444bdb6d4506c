import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { cache } from "react";
import { findSession } from "@/lib/services/access/find-session";
import { sessionCookieName } from "@/lib/services/access/session-cookie";
import type { SessionCookie } from "@/lib/services/access/sign-in";
import { signOut } from "@/lib/services/access/sign-out";
import type { Actor } from "@/lib/services/context";
import { isHttps } from "./client-address";
import { now } from "./clock";
import { signInPath } from "./next-path";
import { getStores } from "./stores";

/** Who is asking; looked up once a request. */
export const currentActor = cache(async (): Promise<Actor> => {
  const { db } = getStores();
  const cookie = (await cookies()).get(await sessionCookieName(db));
  const found = await findSession({ db, now: now() }, cookie?.value);
  return found?.actor ?? { kind: "anonymous" };
});

/** The signed-in user, or a redirect to sign-in that leads back to `here`. */
export async function requireUser(here?: string): Promise<Extract<Actor, { kind: "user" }>> {
  const actor = await currentActor();
  if (actor.kind !== "user") redirect(signInPath(here));
  return actor;
}

/** Only in a server action or a route handler: a page cannot set cookies. */
export async function keepSession({ name, value, maxAgeSeconds }: SessionCookie): Promise<void> {
  const secure = await isHttps();
  (await cookies()).set({ name, value, maxAge: maxAgeSeconds, httpOnly: true, sameSite: "lax", secure, path: "/" });
}

/** Ends the session in the database and takes its cookie away. */
export async function dropSession(): Promise<void> {
  const { db } = getStores();
  const jar = await cookies();
  const name = await sessionCookieName(db);
  await signOut({ db }, jar.get(name)?.value);
  jar.delete(name);
}
