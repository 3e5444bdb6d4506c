import { and, count, eq, lte, sql } from "drizzle-orm";
import type { Queryable } from "../client";
import { account, type Role, session, signInAttempt, user } from "../schema/access";

export type UserRow = typeof user.$inferSelect;
export type SignInAttemptRow = typeof signInAttempt.$inferSelect;

export function countUsers(db: Queryable): number {
  return db.select({ users: count() }).from(user).get()?.users ?? 0;
}

export function findUserByEmail(db: Queryable, email: string): UserRow | undefined {
  return db.select().from(user).where(eq(user.email, email)).get();
}

export function findFirstAdministrator(db: Queryable): UserRow | undefined {
  return db.select().from(user).where(eq(user.role, "administrator")).orderBy(user.createdAt).get();
}

/** A user with a password, as the sign-in library expects them: one row of each table. */
export function insertUserWithPassword(
  db: Queryable,
  made: {
    id: string;
    accountRowId: string;
    name: string;
    email: string;
    role: Role;
    passwordHash: string;
    atMs: number;
  },
): UserRow {
  const at = { createdAt: new Date(made.atMs), updatedAt: new Date(made.atMs) };
  const { id, name, email, role } = made;
  const row = db
    .insert(user)
    .values({ id, name, email, role, ...at })
    .returning()
    .get();
  db.insert(account)
    .values({
      id: made.accountRowId,
      accountId: id,
      providerId: "credential",
      userId: id,
      password: made.passwordHash,
      ...at,
    })
    .run();
  return row;
}

export function updatePassword(db: Queryable, userId: string, passwordHash: string, atMs: number): void {
  db.update(account)
    .set({ password: passwordHash, updatedAt: new Date(atMs) })
    .where(and(eq(account.userId, userId), eq(account.providerId, "credential")))
    .run();
}

/** Signs a user out everywhere; returns how many sessions ended. */
export function deleteSessionsOf(db: Queryable, userId: string): number {
  return db.delete(session).where(eq(session.userId, userId)).run().changes;
}

export function findSignInAttempt(db: Queryable, key: string): SignInAttemptRow | undefined {
  return db.select().from(signInAttempt).where(eq(signInAttempt.key, key)).get();
}

export function upsertSignInAttempt(db: Queryable, row: SignInAttemptRow): void {
  const { attempts, windowStartedAtMs } = row;
  db.insert(signInAttempt)
    .values(row)
    .onConflictDoUpdate({ target: signInAttempt.key, set: { attempts, windowStartedAtMs } })
    .run();
}

export function deleteSignInAttempt(db: Queryable, key: string): void {
  db.delete(signInAttempt).where(eq(signInAttempt.key, key)).run();
}

/** Takes one attempt back, for a sign-in that succeeded. */
export function takeBackSignInAttempt(db: Queryable, key: string): void {
  db.update(signInAttempt)
    .set({ attempts: sql`max(0, ${signInAttempt.attempts} - 1)` })
    .where(eq(signInAttempt.key, key))
    .run();
}

export function deleteSignInAttemptsBefore(db: Queryable, windowStartedAtMs: number): void {
  db.delete(signInAttempt).where(lte(signInAttempt.windowStartedAtMs, windowStartedAtMs)).run();
}

export function deleteSessionsExpiredBy(db: Queryable, atMs: number): void {
  db.delete(session)
    .where(lte(session.expiresAt, new Date(atMs)))
    .run();
}
