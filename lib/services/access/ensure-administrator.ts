import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { countUsers, insertUserWithPassword } from "@/db/queries/access";
import type { Context } from "../context";
import { generatePassword, hashPassword } from "./password";
import { requireCommandLine } from "./require-command-line";

/** Address of the first administrator. `.internal` is set aside for private use, so no post can ever go there. */
export const FIRST_ADMINISTRATOR_EMAIL = "administrator@ledger.internal";

/**
 * Makes the first administrator when there is no user yet, and says the generated password this once. Later runs
 * change nothing.
 */
export async function ensureAdministrator(
  ctx: Pick<Context, "db" | "now" | "actor">,
): Promise<{ state: "created"; email: string; password: string } | { state: "present" }> {
  requireCommandLine(ctx);
  if (countUsers(ctx.db) > 0) return { state: "present" };
  const password = generatePassword();
  const passwordHash = await hashPassword(ctx.db, password);
  return inTransaction(ctx.db, (tx) => {
    if (countUsers(tx) > 0) return { state: "present" as const };
    const { email } = insertUserWithPassword(tx, {
      id: randomUUID(),
      accountRowId: randomUUID(),
      name: "Administrator",
      email: FIRST_ADMINISTRATOR_EMAIL,
      role: "administrator",
      passwordHash,
      atMs: ctx.now,
    });
    return { state: "created" as const, email, password };
  });
}
