"use server";

import { redirect } from "next/navigation";
import { awaitImports } from "@/app/_server/await-imports";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { confirmMapping } from "@/lib/services/trend-imports/confirm";
import { queueTrendImports } from "@/lib/services/trend-imports/queue";
import { fieldErrorsOfForm, mappingFromForm } from "./form";

export async function confirmMappingAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, async (ctx) => {
    const runIds = confirmMapping(ctx, buildingId, mappingFromForm(values));
    queueTrendImports(ctx, buildingId, runIds);
    await awaitImports(ctx, buildingId, runIds);
  });
  if (!outcome.ok) return { ...outcome, fieldErrors: fieldErrorsOfForm(outcome.fieldErrors, values) };
  redirect(`/buildings/${buildingId}/imports`);
}
