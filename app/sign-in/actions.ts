"use server";

import { redirect } from "next/navigation";
import { clientAddress } from "@/app/_server/client-address";
import { type FormState, fieldText } from "@/app/_server/form-state";
import { nextPath, signInPath } from "@/app/_server/next-path";
import { runAction } from "@/app/_server/run-action";
import { dropSession, keepSession } from "@/app/_server/session";
import { signIn } from "@/lib/services/access/sign-in";

export async function signInAction(_: FormState, formData: FormData): Promise<FormState> {
  const address = await clientAddress();
  const posted = { email: fieldText(formData, "email"), password: fieldText(formData, "password"), address };
  const outcome = await runAction(formData, (ctx) => signIn(ctx, posted));
  if (!outcome.ok) return outcome;
  await keepSession(outcome.result);
  redirect(nextPath(fieldText(formData, "next")));
}

export async function signOutAction(): Promise<void> {
  await dropSession();
  redirect(signInPath());
}
