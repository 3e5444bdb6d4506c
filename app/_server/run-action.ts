import { unstable_rethrow } from "next/navigation";
import type { Context } from "@/lib/services/context";
import { ServiceError } from "@/lib/services/errors";
import { type FormFailure, postedValues } from "./form-state";
import { requestContext } from "./request-context";

const UNEXPECTED = "Something went wrong on our side and nothing was saved. Try again; your entries are still here.";

/**
 * Calls one use-case for a posted form. A refusal becomes messages beside the fields, with everything that was
 * entered; any other error is logged and answered with a plain sentence. Redirect after it, not inside it.
 */
export async function runAction<T>(
  formData: FormData,
  work: (ctx: Context) => T | Promise<T>,
): Promise<{ ok: true; result: T } | FormFailure> {
  try {
    return { ok: true, result: await work(await requestContext()) };
  } catch (error) {
    unstable_rethrow(error);
    const failure = { ok: false as const, values: postedValues(formData) };
    if (error instanceof ServiceError) {
      return { ...failure, fieldErrors: error.fieldErrors, formError: error.message };
    }
    console.error(error);
    return { ...failure, fieldErrors: {}, formError: UNEXPECTED };
  }
}
