import { ServiceError } from "@/lib/services/errors";

/** A refusal as a plain answer of a file's address; all else is a fault and goes on. */
export function refusalResponse(error: unknown): Response {
  if (!(error instanceof ServiceError)) throw error;
  const status = error.code === "unauthenticated" ? 401 : error.code === "not-found" ? 404 : 409;
  return new Response(error.message, { status, headers: { "content-type": "text/plain; charset=utf-8" } });
}
