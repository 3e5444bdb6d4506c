import { inTransaction } from "@/db/client";
import { deleteSessionsOf, findFirstAdministrator, updatePassword } from "@/db/queries/access";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { generatePassword, hashPassword } from "./password";
import { requireCommandLine } from "./require-command-line";
import { clearAccountAttempts } from "./throttle";

/** Gives the first administrator a new generated password, said this once, and signs that account out everywhere. */
export async function resetAdministrator(
  ctx: Pick<Context, "db" | "now" | "actor">,
): Promise<{ email: string; password: string; sessionsEnded: number }> {
  requireCommandLine(ctx);
  const administrator = findFirstAdministrator(ctx.db);
  if (!administrator) throw new ServiceError("not-found", "There is no administrator yet: run `access ensure` first.");
  const password = generatePassword();
  const passwordHash = await hashPassword(ctx.db, password);
  const sessionsEnded = inTransaction(ctx.db, (tx) => {
    updatePassword(tx, administrator.id, passwordHash, ctx.now);
    return deleteSessionsOf(tx, administrator.id);
  });
  clearAccountAttempts(ctx.db, administrator.email);
  return { email: administrator.email, password, sessionsEnded };
}
