import type { z } from "zod";
import { ServiceError } from "./errors";

/** Parses a use-case's input. All faults are reported together, by the path of their field. */
export function parseInput<S extends z.ZodType>(schema: S, input: unknown): z.output<S> {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const fieldErrors: Record<string, string> = {};
  for (const issue of result.error.issues) {
    const field = issue.path.join(".");
    fieldErrors[field] ??= issue.message;
  }
  const count = Object.keys(fieldErrors).length;
  const first = Object.values(fieldErrors)[0] ?? "Something in the form is not as it should be.";
  throw new ServiceError("invalid", count > 1 ? `${count} fields need another look.` : first, fieldErrors);
}
