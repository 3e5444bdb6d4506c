import { readFile } from "node:fs/promises";
import path from "node:path";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import { ServiceError } from "@/lib/services/errors";
import { inspectFile } from "@/lib/services/trend-imports/inspect-file";
import { isTimeZone } from "@/lib/time/zone-table";
import { readArguments, UsageError } from "../usage";

/**
 * `trends inspect FILE... --time-zone ZONE`: reads trend exports, stores nothing, prints what is in each as JSON (one
 * object a file: on one line each with --json, else indented). 0 all accepted, 3 something is asked, 4 something refused.
 */
export async function trendsInspect(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, {
    "time-zone": { type: "string" },
    locale: { type: "string" },
    answer: { type: "string", multiple: true },
    json: { type: "boolean" },
  });
  const timeZone = values["time-zone"];
  if (positionals.length === 0) throw new UsageError("Name at least one file.");
  if (!timeZone || !isTimeZone(timeZone)) {
    throw new UsageError("Give the building's time zone with --time-zone, for example America/New_York.");
  }

  const outcomes: TrendInspection["outcome"][] = [];
  for (const file of positionals) {
    const bytes = await readFile(file).catch(() => null);
    if (!bytes) throw new UsageError(`"${file}" cannot be read. Check the path.`);
    const inspection = await inspectFile({
      name: path.basename(file),
      bytes,
      timeZone,
      locale: values.locale,
      answerWords: values.answer ?? [],
    }).catch((error: unknown) => {
      throw error instanceof ServiceError ? new UsageError(error.message) : error;
    });
    outcomes.push(inspection.outcome);
    process.stdout.write(`${JSON.stringify(inspection, null, values.json ? undefined : 2)}\n`);
  }
  if (outcomes.includes("refuse")) return 4;
  return outcomes.includes("ask") ? 3 : 0;
}
