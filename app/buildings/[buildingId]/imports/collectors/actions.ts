"use server";

import { revalidatePath } from "next/cache";
import { numberOf, textOf } from "@/app/_server/form-fields";
import { type FormFailure, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { makeCollectorToken } from "@/lib/services/collectors/make";
import { revokeCollectorToken } from "@/lib/services/collectors/manage";

/** State of the form that makes a token: the token stands in it once, and nowhere else. */
export type TokenState = FormFailure | { ok: true; collector: string; token: string } | null;

export async function makeTokenAction(buildingId: number, _: TokenState, form: FormData): Promise<TokenState> {
  const collector = textOf(postedValues(form), "collector");
  const outcome = await runAction(form, (ctx) => makeCollectorToken(ctx, buildingId, { collector }));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/imports/collectors`);
  return { ok: true, collector: outcome.result.made.collector, token: outcome.result.token };
}

/** Revokes the token that the form names in hidden fields. */
export async function revokeTokenAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const buildingId = numberOf(values, "buildingId") ?? 0;
  await runAction(form, (ctx) => revokeCollectorToken(ctx, buildingId, numberOf(values, "tokenId") ?? 0));
  revalidatePath(`/buildings/${buildingId}/imports/collectors`);
}
