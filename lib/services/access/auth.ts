import { betterAuth } from "better-auth";
import { drizzleAdapter } from "better-auth/adapters/drizzle";
import type { AppDatabase } from "@/db/client";
import { account, session, user, verification } from "@/db/schema/access";
import { signInSecret } from "./secret";

/** A session ends this long after sign-in, however much it is used. */
export const SESSION_LENGTH_S = 30 * 24 * 3600;
export const PASSWORD_LENGTHS = { min: 12, max: 128 } as const;

type Auth = ReturnType<typeof makeAuth>;
const made = new WeakMap<AppDatabase, Auth>();

/** The sign-in library on a database, made on first use: never while a module loads, since a build imports them all. */
export function getAuth(db: AppDatabase): Auth {
  const present = made.get(db);
  if (present) return present;
  const auth = makeAuth(db);
  made.set(db, auth);
  return auth;
}

/** Only its functions are called: no address of the site leads to its own handler, so its origin is a stand-in. */
function makeAuth(db: AppDatabase) {
  return betterAuth({
    appName: "Setpoint Ledger",
    baseURL: "http://localhost",
    secret: signInSecret(db),
    database: drizzleAdapter(db, { provider: "sqlite", schema: { user, session, account, verification } }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_LENGTHS.min,
      maxPasswordLength: PASSWORD_LENGTHS.max,
    },
    session: { expiresIn: SESSION_LENGTH_S, disableSessionRefresh: true },
    user: {
      additionalFields: { role: { type: "string", required: true, input: false, defaultValue: "facilities" } },
    },
    advanced: { cookiePrefix: "setpoint-ledger", useSecureCookies: false },
    telemetry: { enabled: false },
    logger: { level: "error" },
  });
}
