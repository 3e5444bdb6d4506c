"use server";

import { redirect } from "next/navigation";
import { awaitImports } from "@/app/_server/await-imports";
import type { FormState } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { repeatImport } from "@/lib/services/trend-imports/queue";
import { cancelImport, undoImport } from "@/lib/services/trend-imports/withdraw";

export async function cancelImportAction(buildingId: number, runId: number, _: FormState, form: FormData) {
  const outcome = await runAction(form, async (ctx): Promise<void> => {
    cancelImport(ctx, buildingId, runId);
    await awaitImports(ctx, buildingId, [runId]);
  });
  return outcome.ok ? redirect(`/buildings/${buildingId}/imports/${runId}`) : outcome;
}

export async function undoImportAction(buildingId: number, runId: number, _: FormState, form: FormData) {
  const outcome = await runAction(form, async (ctx): Promise<void> => {
    await undoImport(ctx, buildingId, runId);
    await awaitImports(ctx, buildingId, [runId]);
  });
  return outcome.ok ? redirect(`/buildings/${buildingId}/imports/${runId}`) : outcome;
}

export async function repeatImportAction(buildingId: number, runId: number, _: FormState, form: FormData) {
  const outcome = await runAction(form, async (ctx): Promise<void> => {
    repeatImport(ctx, buildingId, runId);
    await awaitImports(ctx, buildingId, [runId]);
  });
  return outcome.ok ? redirect(`/buildings/${buildingId}/imports/${runId}`) : outcome;
}
