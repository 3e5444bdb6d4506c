import type { AppDatabase } from "@/db/client";
import { getAuth } from "./auth";

export async function sessionCookieName(db: AppDatabase): Promise<string> {
  const context = await getAuth(db).$context;
  return context.authCookies.sessionToken.name;
}

/** Request headers with a session cookie's value, as the sign-in library reads them. */
export async function sessionHeaders(db: AppDatabase, cookieValue: string): Promise<Headers> {
  return new Headers({ cookie: `${await sessionCookieName(db)}=${encodeURIComponent(cookieValue)}` });
}
