import { type AppDatabase, inTransaction } from "@/db/client";
import {
  deleteSignInAttempt,
  deleteSignInAttemptsBefore,
  findSignInAttempt,
  takeBackSignInAttempt,
  upsertSignInAttempt,
} from "@/db/queries/access";

export const THROTTLE = {
  windowMs: 15 * 60_000,
  attemptsPerAccount: 5,
  attemptsPerAddress: 30,
  /** Shared by everyone when the address of the asker is not known. */
  attemptsWithoutAddress: 100,
} as const;

type Who = { email: string; address: string | null };

const accountKey = (who: Who): string => `account/${who.email}`;
const addressKey = (who: Who): string => `address/${who.address ?? "unknown"}`;

/**
 * Counts an attempt to sign in before the password is looked at, so that attempts sent together are counted too.
 * Refuses when the account or the address has used up its window; a refused attempt does not lengthen the wait.
 */
export function takeSignInAttempt(
  db: AppDatabase,
  who: Who,
  now: number,
): { status: "allowed" } | { status: "refused"; waitMs: number } {
  const limits = [
    { key: accountKey(who), limit: THROTTLE.attemptsPerAccount },
    {
      key: addressKey(who),
      limit: who.address === null ? THROTTLE.attemptsWithoutAddress : THROTTLE.attemptsPerAddress,
    },
  ];
  return inTransaction(db, (tx) => {
    deleteSignInAttemptsBefore(tx, now - THROTTLE.windowMs);
    const counted = limits.map(({ key, limit }) => ({ key, limit, row: findSignInAttempt(tx, key) }));
    const waits = counted.flatMap(({ limit, row }) =>
      row && row.attempts >= limit ? [row.windowStartedAtMs + THROTTLE.windowMs - now] : [],
    );
    if (waits.length > 0) return { status: "refused" as const, waitMs: Math.max(...waits) };
    for (const { key, row } of counted) {
      const windowStartedAtMs = row?.windowStartedAtMs ?? now;
      upsertSignInAttempt(tx, { key, attempts: (row?.attempts ?? 0) + 1, windowStartedAtMs });
    }
    return { status: "allowed" as const };
  });
}

/** A sign-in that succeeded clears its account and gives its address the attempt back. */
export function settleSignInAttempt(db: AppDatabase, who: Who): void {
  inTransaction(db, (tx) => {
    deleteSignInAttempt(tx, accountKey(who));
    takeBackSignInAttempt(tx, addressKey(who));
  });
}

export function clearAccountAttempts(db: AppDatabase, email: string): void {
  deleteSignInAttempt(db, accountKey({ email, address: null }));
}
