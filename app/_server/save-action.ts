import { revalidatePath } from "next/cache";
import type { Context } from "@/lib/services/context";
import type { FormState } from "./form-state";
import { runAction } from "./run-action";

/** Calls one use-case for a posted form; once it is through, all pages under `path` are read anew. */
export async function saveAction(
  form: FormData,
  path: string,
  work: (ctx: Context) => unknown | Promise<unknown>,
): Promise<FormState> {
  const outcome = await runAction(form, work);
  if (!outcome.ok) return outcome;
  revalidatePath(path, "layout");
  return { ok: true };
}
