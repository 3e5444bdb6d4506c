import { APIError } from "better-auth/api";
import { parseSetCookieHeader } from "better-auth/cookies";
import { z } from "zod";
import { deleteSessionsExpiredBy } from "@/db/queries/access";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { getAuth, PASSWORD_LENGTHS, SESSION_LENGTH_S } from "./auth";
import { sessionCookieName } from "./session-cookie";
import { settleSignInAttempt, takeSignInAttempt } from "./throttle";

const input = z.object({
  email: z
    .string()
    .trim()
    .toLowerCase()
    .pipe(z.email({ error: "Enter the e-mail address of your account." })),
  password: z
    .string()
    .min(1, "Enter your password.")
    .max(PASSWORD_LENGTHS.max, "That is longer than any password here."),
  /** Network address of the asker, or null when it cannot be trusted. */
  address: z.string().nullable(),
});

/** What a browser has to keep: set it as an httpOnly, SameSite=Lax cookie. */
export type SessionCookie = { name: string; value: string; maxAgeSeconds: number };

/**
 * Checks a password and opens a session. Attempts are limited by account and by address; a wrong address of an
 * account and a wrong password are answered alike.
 */
export async function signIn(
  ctx: Pick<Context, "db" | "now">,
  raw: { email: string; password: string; address: string | null },
): Promise<SessionCookie> {
  const { email, password, address } = parseInput(input, raw);
  const attempt = takeSignInAttempt(ctx.db, { email, address }, ctx.now);
  if (attempt.status === "refused") {
    const minutes = Math.max(1, Math.ceil(attempt.waitMs / 60_000));
    throw new ServiceError(
      "forbidden",
      `Too many attempts to sign in. Try again in ${minutes} ${minutes === 1 ? "minute" : "minutes"}.`,
    );
  }
  const cookie = await openSession(ctx, email, password);
  settleSignInAttempt(ctx.db, { email, address });
  deleteSessionsExpiredBy(ctx.db, ctx.now);
  return cookie;
}

async function openSession(ctx: Pick<Context, "db">, email: string, password: string): Promise<SessionCookie> {
  const auth = getAuth(ctx.db);
  const name = await sessionCookieName(ctx.db);
  try {
    const { headers } = await auth.api.signInEmail({ body: { email, password }, returnHeaders: true });
    const value = headers
      .getSetCookie()
      .map((line) => parseSetCookieHeader(line).get(name)?.value)
      .find((text) => text);
    if (!value) throw new Error("the sign-in library set no session cookie");
    return { name, value, maxAgeSeconds: SESSION_LENGTH_S };
  } catch (error) {
    if (!(error instanceof APIError) || error.status !== "UNAUTHORIZED") throw error;
    throw new ServiceError("unauthenticated", "The e-mail address or the password is not right.");
  }
}
