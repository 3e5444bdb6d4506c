import { readBuilding } from "@/lib/services/buildings/find";
import { readAnswerWords } from "@/lib/services/trend-imports/answer-words";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { withContext } from "../context";
import { exitCodeOf, type FileReport, failureReport, reportLines } from "../file-report";
import { findFiles } from "../find-files";
import { asUsage, readArguments, readBuildingId } from "../usage";

/**
 * `trends import FILE... --building ID`: brings trend files in one after the other, without a person to map them.
 * 0 all imported or unchanged, 1 one failed, 3 a question is open (nothing of that file is stored), 4 one was refused.
 */
export async function trendsImport(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, {
    building: { type: "string" },
    "accept-proposals": { type: "boolean" },
    answer: { type: "string", multiple: true },
    json: { type: "boolean" },
  });
  const buildingId = readBuildingId(values.building);
  const files = await findFiles(positionals);
  const answers = asUsage(() => readAnswerWords(values.answer ?? []));
  const rule = { acceptProposals: values["accept-proposals"] ?? false, answers };
  const reports = await withContext(async (ctx) => {
    readBuilding(ctx, buildingId);
    const done: FileReport[] = [];
    for (const file of files) {
      const report = await importTrendFile({ ...ctx, now: Date.now() }, buildingId, file, rule).catch((error) =>
        failureReport(file.name, error),
      );
      if (!values.json) process.stdout.write(`${reportLines(report).join("\n")}\n`);
      done.push(report);
    }
    return done;
  });
  if (values.json) process.stdout.write(`${JSON.stringify({ building: buildingId, files: reports })}\n`);
  return exitCodeOf(reports);
}
