export type ServiceErrorCode =
  | "not-found"
  | "forbidden"
  | "conflict"
  | "invalid"
  | "precondition"
  | "unauthenticated"
  | "too-large"
  | "too-many"
  | "no-space"
  | "gone";

/** A refusal by a use-case, worded for the person who asked. Throwing inside a transaction rolls it back. */
export class ServiceError extends Error {
  readonly code: ServiceErrorCode;
  /** Messages by form field, when the refusal is about fields. */
  readonly fieldErrors: Record<string, string>;

  constructor(code: ServiceErrorCode, message: string, fieldErrors: Record<string, string> = {}) {
    super(message);
    this.name = "ServiceError";
    this.code = code;
    this.fieldErrors = fieldErrors;
  }
}
