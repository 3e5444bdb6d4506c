import { STATUS_CODES } from "node:http";
import { ServiceError, type ServiceErrorCode } from "@/lib/services/errors";
import { OffsetConflict } from "@/lib/services/uploads/append";

const STATUS: Record<ServiceErrorCode, number> = {
  "not-found": 404,
  forbidden: 403,
  conflict: 409,
  invalid: 422,
  precondition: 409,
  unauthenticated: 401,
  "too-large": 413,
  "too-many": 429,
  "no-space": 507,
  gone: 410,
};

const OFFSET_PROBLEM = "https://iana.org/assignments/http-problem-types#mismatching-upload-offset";

/** A refusal as a problem document (RFC 9457): what is wrong and what to do in `detail`, where in `instance` and `errors`. */
export function problem(
  request: Request,
  status: number,
  detail: string,
  { headers = {}, ...more }: { type?: string; headers?: Record<string, string> } & Record<string, unknown> = {},
): Response {
  const { pathname } = new URL(request.url);
  const body = { type: "about:blank", title: STATUS_CODES[status], status, detail, instance: pathname, ...more };
  return new Response(request.method === "HEAD" ? null : JSON.stringify(body), {
    status,
    headers: { "content-type": "application/problem+json", "cache-control": "no-store", ...headers },
  });
}

/** The problem document of anything that a use-case may throw. What is no refusal is logged and said plainly. */
export function problemOf(request: Request, error: unknown): Response {
  if (error instanceof OffsetConflict)
    return problem(request, 409, error.message, {
      type: OFFSET_PROBLEM,
      "expected-offset": error.offset,
      headers: { "upload-offset": String(error.offset), "upload-complete": "?0" },
    });
  if (error instanceof ServiceError) {
    const errors = Object.entries(error.fieldErrors).map(([where, what]) => ({ where, what }));
    return problem(request, STATUS[error.code], error.message, {
      ...(errors.length > 0 ? { errors } : {}),
      headers: {
        ...(error.code === "unauthenticated" ? { "www-authenticate": "Bearer" } : {}),
        ...(error.code === "too-many" ? { "retry-after": "60" } : {}),
      },
    });
  }
  if ((error as { code?: unknown } | null)?.code === "SQLITE_BUSY")
    return problem(
      request,
      503,
      "An import is being stored at this moment. Nothing of this call was stored: send it again.",
      {
        headers: { "retry-after": "5" },
      },
    );
  console.error(error);
  return problem(request, 500, "Something went wrong on our side. Send it again; what is here already stays.");
}
