import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type AppDatabase, openAppDatabase } from "@/db/client";
import { account, session, user } from "@/db/schema/access";
import { ensureAdministrator, FIRST_ADMINISTRATOR_EMAIL } from "@/lib/services/access/ensure-administrator";
import { findSession } from "@/lib/services/access/find-session";
import { resetAdministrator } from "@/lib/services/access/reset-administrator";
import { revokeSessions } from "@/lib/services/access/revoke-sessions";
import { signInSecret } from "@/lib/services/access/secret";
import { signIn } from "@/lib/services/access/sign-in";
import { signOut } from "@/lib/services/access/sign-out";
import { THROTTLE } from "@/lib/services/access/throttle";
import type { Actor, Context } from "@/lib/services/context";

const DAY_MS = 24 * 3600_000;
const commandLine: Actor = { kind: "command-line", name: "test" };

let db: AppDatabase;
let now: number;

beforeEach(() => {
  db = openAppDatabase(":memory:");
  now = Date.now();
});
afterEach(() => {
  db.$client.close();
});

const ctx = (actor: Actor = commandLine): Context => ({ db, now, actor }) as Context;

async function administrator(): Promise<{ email: string; password: string }> {
  const made = await ensureAdministrator(ctx());
  if (made.state !== "created") throw new Error("expected a first run");
  return made;
}

const enter = (email: string, password: string, address: string | null = "192.0.2.7") =>
  signIn({ db, now }, { email, password, address });

describe("the first run", () => {
  it("makes one administrator and says the password once", async () => {
    const made = await ensureAdministrator(ctx());
    expect(made).toMatchObject({ state: "created", email: FIRST_ADMINISTRATOR_EMAIL });
    expect(made.state === "created" && made.password).toMatch(/^([a-z2-9]{4}-){4}[a-z2-9]{4}$/);
    expect(await ensureAdministrator(ctx())).toEqual({ state: "present" });
    expect(db.select().from(user).all()).toMatchObject([{ role: "administrator" }]);
  });

  it("keeps no password in the clear", async () => {
    const { password } = await administrator();
    const [row] = db.select().from(account).all();
    expect(row?.password).toMatch(/^[0-9a-f]{32}:[0-9a-f]{128}$/);
    expect(row?.password).not.toContain(password);
  });

  it("makes one administrator when two runs start together", async () => {
    const states = await Promise.all([ensureAdministrator(ctx()), ensureAdministrator(ctx())]);
    expect(states.map((made) => made.state).sort()).toEqual(["created", "present"]);
  });

  it("is for the command line only", async () => {
    await expect(ensureAdministrator(ctx({ kind: "anonymous" }))).rejects.toMatchObject({ code: "forbidden" });
  });
});

describe("signing in", () => {
  it("opens a session that names the user and the role", async () => {
    const { email, password } = await administrator();
    const cookie = await enter(email, password);
    expect(cookie).toMatchObject({ name: "setpoint-ledger.session_token", maxAgeSeconds: 30 * 24 * 3600 });
    const found = await findSession({ db, now }, cookie.value);
    expect(found?.actor).toMatchObject({ kind: "user", name: "Administrator", role: "administrator" });
  });

  it("takes the address in any case and with spaces around it", async () => {
    const { email, password } = await administrator();
    await expect(enter(`  ${email.toUpperCase()} `, password)).resolves.toBeDefined();
  });

  it("answers a wrong password and an unknown account alike", async () => {
    const { email } = await administrator();
    const wrong = { code: "unauthenticated", message: "The e-mail address or the password is not right." };
    await expect(enter(email, "not the password")).rejects.toMatchObject(wrong);
    await expect(enter("nobody@ledger.internal", "not the password")).rejects.toMatchObject(wrong);
    expect(db.select().from(session).all()).toEqual([]);
  });

  it("names the field that is blank or no e-mail address", async () => {
    await expect(enter("administrator", "")).rejects.toMatchObject({
      code: "invalid",
      fieldErrors: { email: "Enter the e-mail address of your account.", password: "Enter your password." },
    });
  });
});

describe("the throttle", () => {
  it("refuses an account after its attempts, even with the right password, until the window has passed", async () => {
    const { email, password } = await administrator();
    for (let attempt = 0; attempt < THROTTLE.attemptsPerAccount; attempt++) {
      await expect(enter(email, "wrong", `192.0.2.${attempt}`)).rejects.toMatchObject({ code: "unauthenticated" });
    }
    now += 60_000;
    await expect(enter(email, password, "198.51.100.1")).rejects.toMatchObject({
      code: "forbidden",
      message: "Too many attempts to sign in. Try again in 14 minutes.",
    });
    now += 14 * 60_000;
    await expect(enter(email, password)).resolves.toBeDefined();
  });

  it("counts attempts sent together before any has been answered", async () => {
    const { email } = await administrator();
    const all = await Promise.allSettled(Array.from({ length: 8 }, () => enter(email, "wrong")));
    const codes = all.map((each) => (each.status === "rejected" ? each.reason.code : "in"));
    expect(codes.filter((code) => code === "unauthenticated")).toHaveLength(THROTTLE.attemptsPerAccount);
    expect(codes.filter((code) => code === "forbidden")).toHaveLength(3);
  });

  it("forgets an account's failures once it has signed in", async () => {
    const { email, password } = await administrator();
    for (let round = 0; round < 2; round++) {
      for (let attempt = 1; attempt < THROTTLE.attemptsPerAccount; attempt++) {
        await expect(enter(email, "wrong")).rejects.toMatchObject({ code: "unauthenticated" });
      }
      await expect(enter(email, password)).resolves.toBeDefined();
    }
  });

  it("refuses an address that tries many accounts, and leaves other addresses alone", async () => {
    const { email, password } = await administrator();
    db.run(`insert into sign_in_attempt values ('address/203.0.113.9', ${THROTTLE.attemptsPerAddress}, ${now})`);
    await expect(enter("someone@ledger.internal", "wrong", "203.0.113.9")).rejects.toMatchObject({ code: "forbidden" });
    await expect(enter(email, password, "203.0.113.10")).resolves.toBeDefined();
  });
});

describe("a session", () => {
  it("ends at sign-out, and signing out twice is no fault", async () => {
    const { email, password } = await administrator();
    const cookie = await enter(email, password);
    await signOut({ db }, cookie.value);
    expect(await findSession({ db, now }, cookie.value)).toBeNull();
    await expect(signOut({ db }, cookie.value)).resolves.toBeUndefined();
  });

  it("ends after 30 days, used or not", async () => {
    const { email, password } = await administrator();
    const cookie = await enter(email, password);
    now += 30 * DAY_MS - 60_000;
    expect(await findSession({ db, now }, cookie.value)).not.toBeNull();
    now += 120_000;
    expect(await findSession({ db, now }, cookie.value)).toBeNull();
  });

  it("is removed with the other expired ones at the next sign-in", async () => {
    const { email, password } = await administrator();
    const old = await enter(email, password);
    db.update(session)
      .set({ expiresAt: new Date(now - 1) })
      .run();
    await enter(email, password);
    expect(db.select().from(session).all()).toHaveLength(1);
    expect(await findSession({ db, now }, old.value)).toBeNull();
  });

  it("is refused when its cookie is changed, unsigned or made up", async () => {
    const { email, password } = await administrator();
    const { value } = await enter(email, password);
    const [token] = value.split(".");
    const changed = `${value.startsWith("A") ? "B" : "A"}${value.slice(1)}`;
    for (const forged of [token, `${token}.`, changed, "x", "", undefined]) {
      expect(await findSession({ db, now }, forged)).toBeNull();
    }
  });

  it("of a user ends everywhere when revoked, by that user or an administrator but not by a colleague", async () => {
    const { email, password } = await administrator();
    const first = await enter(email, password);
    const second = await enter(email, password);
    const signedIn = await findSession({ db, now }, first.value);
    if (!signedIn) throw new Error("expected a session");
    const colleague: Actor = { kind: "user", id: "other", name: "Colleague", role: "facilities" };
    expect(() => revokeSessions(ctx(colleague), signedIn.actor.id)).toThrowError("Only an administrator");
    expect(revokeSessions(ctx(signedIn.actor), signedIn.actor.id)).toEqual({ sessionsEnded: 2 });
    expect(await findSession({ db, now }, second.value)).toBeNull();
  });
});

describe("resetting the administrator", () => {
  it("replaces the password, ends the sessions and lifts the throttle", async () => {
    const { email, password } = await administrator();
    const cookie = await enter(email, password);
    for (let attempt = 0; attempt < THROTTLE.attemptsPerAccount; attempt++) {
      await expect(enter(email, "wrong")).rejects.toBeDefined();
    }
    const reset = await resetAdministrator(ctx());
    expect(reset).toMatchObject({ email, sessionsEnded: 1 });
    expect(await findSession({ db, now }, cookie.value)).toBeNull();
    await expect(enter(email, password)).rejects.toMatchObject({ code: "unauthenticated" });
    await expect(enter(email, reset.password)).resolves.toBeDefined();
  });

  it("needs an administrator and the command line", async () => {
    await expect(resetAdministrator(ctx())).rejects.toMatchObject({ code: "not-found" });
    await expect(resetAdministrator(ctx({ kind: "anonymous" }))).rejects.toMatchObject({ code: "forbidden" });
  });
});

describe("the secret", () => {
  it("is made once beside the database, for its owner alone, and cookies outlive a restart", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "ledger-"));
    try {
      const file = path.join(folder, "app.db");
      const before = openAppDatabase(file);
      const made = await ensureAdministrator({ db: before, now, actor: commandLine });
      if (made.state !== "created") throw new Error("expected a first run");
      const cookie = await signIn({ db: before, now }, { ...made, address: null });
      before.$client.close();

      const secretFile = path.join(folder, "sign-in-secret");
      expect(existsSync(secretFile)).toBe(true);
      expect(statSync(secretFile).mode & 0o777).toBe(0o600);
      expect(readFileSync(secretFile, "utf8").trim()).toHaveLength(43);

      const after = openAppDatabase(file);
      expect(signInSecret(after)).toBe(readFileSync(secretFile, "utf8").trim());
      expect(await findSession({ db: after, now }, cookie.value)).not.toBeNull();
      after.$client.close();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
