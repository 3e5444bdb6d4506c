import { notFound, redirect } from "next/navigation";
import type { Context } from "@/lib/services/context";
import { ServiceError } from "@/lib/services/errors";
import { signInPath } from "./next-path";
import { requestContext } from "./request-context";

/**
 * Reads for a page through a use-case: what is not there is "not found", and someone who is not signed in is sent to
 * sign-in and back to `here` (the page's own path).
 */
export async function readAs<T>(work: (ctx: Context) => T | Promise<T>, here?: string): Promise<T> {
  const ctx = await requestContext();
  try {
    return await work(ctx);
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") notFound();
    if (error instanceof ServiceError && error.code === "unauthenticated") redirect(signInPath(here));
    throw error;
  }
}
