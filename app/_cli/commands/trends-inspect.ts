import { readFile } from "node:fs/promises";
import path from "node:path";
import { answersFromWords } from "@/lib/importers/trend-csv/answers-from-words";
import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
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
  const answers = answersFromWords(values.answer ?? []);
  if (answers.status === "invalid") throw new UsageError(answers.message);

  const outcomes: TrendInspection["outcome"][] = [];
  for (const file of positionals) {
    const bytes = await readFile(file).catch(() => null);
    if (!bytes) throw new UsageError(`"${file}" cannot be read. Check the path.`);
    const inspection = await inspectTrendFile({
      fileName: path.basename(file),
      bytes,
      timeZone,
      locale: values.locale,
      answers: answers.answers,
    });
    outcomes.push(inspection.outcome);
    process.stdout.write(`${JSON.stringify(inspection, null, values.json ? undefined : 2)}\n`);
  }
  if (outcomes.includes("refuse")) return 4;
  return outcomes.includes("ask") ? 3 : 0;
}
