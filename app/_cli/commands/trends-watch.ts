import { statSync } from "node:fs";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { readBuilding } from "@/lib/services/buildings/find";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { withContext } from "../context";
import { exitCodeOf, type FileReport, failureReport, reportLines } from "../file-report";
import { readArguments, readBuildingId, UsageError } from "../usage";
import { fileAway } from "../watch/file-away";
import { takeFolder } from "../watch/lock-file";
import { lookInto, settledFiles } from "../watch/settled-files";

const SECOND_LOOK_MS = 2_000;

/**
 * `trends watch FOLDER --building ID`: brings in what is put into a folder, once it has stopped growing, and files it
 * away under `done`, `asked` or `refused` with its result beside it. With --once it looks twice and ends, with the exit
 * code of `trends import`; else it goes on until it is told to stop. 1 when another process watches the folder.
 */
export async function trendsWatch(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, {
    building: { type: "string" },
    once: { type: "boolean" },
    every: { type: "string", default: "60" },
    "accept-proposals": { type: "boolean" },
    json: { type: "boolean" },
  });
  const buildingId = readBuildingId(values.building);
  const folder = readFolder(positionals);
  const everyMs = readSeconds(values.every) * 1000;
  const stop = new AbortController();
  const onSignal = () => stop.abort();
  process.once("SIGINT", onSignal).once("SIGTERM", onSignal);
  const lock = takeFolder(folder, Date.now());
  if ("heldBy" in lock) {
    const { host, pid, since } = lock.heldBy;
    console.error(`Process ${pid} on ${host} has watched this folder since ${since}. Stop it first, or let it work.`);
    return 1;
  }
  const rule = { acceptProposals: values["accept-proposals"] ?? false, answers: {} };
  const print = (report: FileReport, movedTo: string | null) => {
    const text = values.json
      ? JSON.stringify({ building: buildingId, movedTo, ...report })
      : [
          ...reportLines(report),
          movedTo ? `  moved to ${movedTo}` : "  left where it is; tried again at the next look",
        ].join("\n");
    process.stdout.write(`${text}\n`);
  };
  try {
    return await withContext(async (ctx) => {
      readBuilding(ctx, buildingId);
      const reports: FileReport[] = [];
      for (let before = lookInto(folder); !stop.signal.aborted; ) {
        await wait(values.once ? SECOND_LOOK_MS : everyMs, null, { signal: stop.signal }).catch(() => {});
        if (stop.signal.aborted) break;
        const now = lookInto(folder);
        for (const name of settledFiles(before, now)) {
          if (stop.signal.aborted) break;
          const file = { name, bytes: path.join(folder, name) };
          const report = await importTrendFile({ ...ctx, now: Date.now() }, buildingId, file, rule).catch((error) =>
            failureReport(name, error),
          );
          print(report, fileAway(folder, name, report));
          if (values.once) reports.push(report);
        }
        before = now;
        if (values.once) break;
      }
      return exitCodeOf(reports);
    });
  } finally {
    process.off("SIGINT", onSignal).off("SIGTERM", onSignal);
    lock.release();
  }
}

function readFolder(positionals: readonly string[]): string {
  const [folder] = positionals;
  if (!folder || positionals.length > 1) throw new UsageError("Name one folder.");
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory())
    throw new UsageError(`"${folder}" is not a folder. Check the path.`);
  return path.resolve(folder);
}

function readSeconds(word: string): number {
  const seconds = Number(word);
  if (!(seconds >= 1 && seconds <= 86_400)) throw new UsageError("Give --every in seconds, from 1 to 86400.");
  return seconds;
}
