import { readBuilding } from "@/lib/services/buildings/find";
import { ServiceError } from "@/lib/services/errors";
import { readAnswerWords } from "@/lib/services/trend-imports/answer-words";
import { type FileImport, importTrendFile } from "@/lib/services/trend-imports/import-file";
import { withContext } from "../context";
import { findFiles } from "../find-files";
import { asUsage, readArguments, readBuildingId } from "../usage";

type FileReport = FileImport | { file: string; outcome: "failed"; message: string };

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
        failure(file.name, error),
      );
      if (!values.json) process.stdout.write(`${reportLines(report).join("\n")}\n`);
      done.push(report);
    }
    return done;
  });
  if (values.json) process.stdout.write(`${JSON.stringify({ building: buildingId, files: reports })}\n`);
  return exitCode(reports);
}

/** A file that cannot be brought in does not stop the others; a fault of the program does. */
function failure(file: string, error: unknown): FileReport {
  if (!(error instanceof ServiceError)) throw error;
  return { file, outcome: "failed", message: error.message };
}

function exitCode(reports: readonly FileReport[]): number {
  const has = (outcome: FileReport["outcome"]) => reports.some((each) => each.outcome === outcome);
  if (has("failed")) return 1;
  if (has("refused")) return 4;
  return has("asked") ? 3 : 0;
}

function reportLines(report: FileReport): string[] {
  const lines = [`${report.file}: ${report.outcome}. ${report.message}`];
  if (report.outcome === "failed") return lines;
  const { rows } = report;
  if (rows)
    lines.push(
      `  rows ${rows.rowsInFile} = ${rows.accepted} accepted + ${rows.repaired} repaired + ${rows.heldBack} held back + ${rows.rejected} rejected + ${rows.ignored} ignored`,
    );
  for (const { name, kind, zone } of report.mapped)
    lines.push(`  ${name}: ${kind}${zone === null ? "" : ` of ${zone}`}`);
  for (const { name, reason } of report.open) lines.push(`  open: ${name}: ${reason}`);
  for (const { what, choices, proposal } of report.ask)
    lines.push(`  asked: --answer ${what}=${choices.join("|")}${proposal ? ` (proposed: ${proposal})` : ""}`);
  for (const { name, reason } of report.leftOut) lines.push(`  left out: ${name}: ${reason}`);
  for (const { severity, sentence } of report.findings) lines.push(`  ${severity}: ${sentence}`);
  if (report.outcome === "asked")
    lines.push("  Map the points on the imports page, or repeat with --accept-proposals and the answers asked for.");
  return lines;
}
