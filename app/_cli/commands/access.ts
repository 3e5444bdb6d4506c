import { ensureAdministrator } from "@/lib/services/access/ensure-administrator";
import { resetAdministrator } from "@/lib/services/access/reset-administrator";
import { withContext } from "../context";

/** Makes the first administrator and prints the password, this once. Says nothing when there is one. */
export async function accessEnsure(): Promise<number> {
  const result = await withContext((ctx) => ensureAdministrator(ctx));
  if (result.state === "created") printSignIn(result);
  return 0;
}

/** Gives the first administrator a new password and prints it, this once. */
export async function accessReset(): Promise<number> {
  printSignIn(await withContext((ctx) => resetAdministrator(ctx)));
  return 0;
}

export function printSignIn({ email, password }: { email: string; password: string }): void {
  process.stdout.write(
    [
      "",
      `Sign in as  ${email}`,
      `Password    ${password}`,
      "The password is shown this once; `npm run cli -- access reset` makes a new one.",
      "",
      "",
    ].join("\n"),
  );
}
