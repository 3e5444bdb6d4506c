import { parseArgs } from "node:util";
import { ServiceError } from "@/lib/services/errors";

/** The command was called wrongly; the message says how. */
export class UsageError extends Error {}

type Options = NonNullable<Parameters<typeof parseArgs>[0]>["options"];

/** Words and options of a command; an option that it does not know is a usage error. */
export function readArguments<O extends NonNullable<Options>>(args: string[], options: O) {
  try {
    return parseArgs({ args, options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** A building number given as a word. */
export function readBuildingId(word: string | undefined): number {
  const id = Number(word);
  if (!Number.isSafeInteger(id) || id < 1)
    throw new UsageError("Give the building's number; `export` and the address of its page show it.");
  return id;
}

/** `what=value` pairs as an object. */
export function readAnswers(pairs: readonly string[] = []): Record<string, string> {
  const answers: Record<string, string> = {};
  for (const pair of pairs) {
    const at = pair.indexOf("=");
    if (at < 1) throw new UsageError(`"${pair}" is not an answer: write what=value, for example date-order=mdy.`);
    answers[pair.slice(0, at)] = pair.slice(at + 1);
  }
  return answers;
}

/** Reads something that was typed; its refusal is a usage error. */
export function asUsage<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof ServiceError ? new UsageError(error.message) : error;
  }
}
