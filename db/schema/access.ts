import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";

export const ROLES = ["administrator", "facilities"] as const;
export type Role = (typeof ROLES)[number];

/** Someone who signs in. The sign-in library names the fields of this table and of the three below. */
export const user = sqliteTable(
  "user",
  {
    id: text().primaryKey(),
    name: text().notNull(),
    /** Kept in lower case. */
    email: text().notNull(),
    emailVerified: integer({ mode: "boolean" }).notNull().default(false),
    image: text(),
    role: text({ enum: ROLES }).notNull().default("facilities"),
    createdAt: integer("created_at_ms", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at_ms", { mode: "timestamp_ms" }).notNull(),
  },
  (t) => [uniqueIndex("user_email").on(t.email), check("user_role", sql`${t.role} in ('administrator', 'facilities')`)],
);

/** A signed-in browser. The cookie carries the token with a signature; deleting the row signs the browser out. */
export const session = sqliteTable(
  "session",
  {
    id: text().primaryKey(),
    token: text().notNull(),
    userId: text()
      .notNull()
      .references(() => user.id, { onDelete: "cascade" }),
    expiresAt: integer("expires_at_ms", { mode: "timestamp_ms" }).notNull(),
    ipAddress: text(),
    userAgent: text(),
    createdAt: integer("created_at_ms", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at_ms", { mode: "timestamp_ms" }).notNull(),
  },
  (t) => [uniqueIndex("session_token").on(t.token), index("session_user").on(t.userId)],
);

/** How a user signs in: here by password only, kept as an scrypt hash. */
export const account = sqliteTable(
  "account",
  {
    id: text().primaryKey(),
    accountId: text().notNull(),
    providerId: text().notNull(),
    userId: text()
      .notNull()
      .references(() => user.id, { onDelete: "cascade" }),
    password: text(),
    accessToken: text(),
    refreshToken: text(),
    idToken: text(),
    accessTokenExpiresAt: integer("access_token_expires_at_ms", { mode: "timestamp_ms" }),
    refreshTokenExpiresAt: integer("refresh_token_expires_at_ms", { mode: "timestamp_ms" }),
    scope: text(),
    createdAt: integer("created_at_ms", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at_ms", { mode: "timestamp_ms" }).notNull(),
  },
  (t) => [uniqueIndex("account_provider").on(t.providerId, t.accountId), index("account_user").on(t.userId)],
);

/** Short-lived values of the sign-in library; nothing here uses them yet. */
export const verification = sqliteTable(
  "verification",
  {
    id: text().primaryKey(),
    identifier: text().notNull(),
    value: text().notNull(),
    expiresAt: integer("expires_at_ms", { mode: "timestamp_ms" }).notNull(),
    createdAt: integer("created_at_ms", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at_ms", { mode: "timestamp_ms" }).notNull(),
  },
  (t) => [index("verification_identifier").on(t.identifier)],
);

/** Attempts to sign in that have not succeeded, by account and by address, within a window that began at the first. */
export const signInAttempt = sqliteTable(
  "sign_in_attempt",
  {
    /** `account/<email>` or `address/<address>`. */
    key: text().primaryKey(),
    attempts: integer().notNull(),
    windowStartedAtMs: integer().notNull(),
  },
  (t) => [index("sign_in_attempt_window").on(t.windowStartedAtMs)],
);
