"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { awaitImports } from "@/app/_server/await-imports";
import { type PostedValues, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import type { Context } from "@/lib/services/context";
import { acceptProposals, setEntries, undoStep } from "@/lib/services/trend-imports/bulk-step";
import { confirmEntered, keepEntered } from "@/lib/services/trend-imports/enter-mapping";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { queueTrendImports } from "@/lib/services/trend-imports/queue";
import { filterFrom, filterQuery, linesShown } from "./filter";
import { bulkChangeFrom, enteredFromForm, fieldErrorsOfForm, selectedNames } from "./form";
import { changeWords } from "./view-model";

/** Does what the pressed button says; whatever it is, what was entered on the page is kept first. */
export async function mappingAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const step = textOf(values, "step");
  const path = `/buildings/${buildingId}/imports`;
  const outcome = await runAction(form, async (ctx) => {
    keepEntered(ctx, buildingId, enteredFromForm(values, step === "confirm" ? "all" : "touched"));
    if (step === "confirm") await confirm(ctx, buildingId, values);
    else if (step === "set") setSelected(ctx, buildingId, values);
    else if (step === "accept") acceptProposals(ctx, buildingId);
    else if (step === "undo") undoStep(ctx, buildingId);
  });
  // What was kept shows on the page, whether the step was refused or not.
  revalidatePath(`${path}/mapping`);
  if (!outcome.ok) return { ...outcome, fieldErrors: fieldErrorsOfForm(outcome.fieldErrors, values) };
  if (step === "confirm") redirect(path);
  if (step === "show") redirect(`${path}/mapping${filterQuery(filterFrom(filterFields(values, "1"), false))}`);
  const page = /^page-(\d+)$/.exec(step)?.[1];
  if (page) redirect(`${path}/mapping${filterQuery(filterFrom(filterFields(values, page), false))}`);
  return { ok: true };
}

async function confirm(ctx: Context, buildingId: number, values: PostedValues): Promise<void> {
  const runIds = confirmEntered(ctx, buildingId, { cautionsSeen: textOf(values, "cautionsSeen") });
  queueTrendImports(ctx, buildingId, runIds);
  await awaitImports(ctx, buildingId, runIds);
}

function setSelected(ctx: Context, buildingId: number, values: PostedValues): void {
  const change = bulkChangeFrom(values);
  const { lines } = readMappingTask(ctx, buildingId);
  const shown = () =>
    linesShown(lines, filterFrom(filterFields(values, "1", "shown."), false)).map((line) => line.name);
  const names = values.allShown === undefined ? selectedNames(values) : shown();
  setEntries(ctx, buildingId, names, change, changeWords(change));
}

/** The filter as it stands in its fields, or (by prefix) as the page was drawn with it. */
const filterFields = (values: PostedValues, page: string, prefix = "") => ({
  q: textOf(values, `${prefix}q`),
  show: textOf(values, `${prefix}show`) || "all",
  what: textOf(values, `${prefix}what`),
  page,
});
