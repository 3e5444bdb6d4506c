import type { PointRow } from "@/db/queries/points";
import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import { FILE_UNITS, type TrendAsk } from "@/lib/importers/trend-csv/trend-file";
import { BUILDING_KINDS } from "@/lib/trends/point-kind";
import { answerTo } from "./answer-to";
import type { FileAsk } from "./mapping";
import type { MappingLine } from "./mapping-lines";
import type { FileAnswers, PointChoice } from "./run-input";

type Mapped = Extract<PointChoice, { skip: false }>;

/** What the building has: its zones and the points that were mapped before. */
export type Present = { zoneIds: ReadonlySet<number>; points: readonly PointRow[] };

/** A sentence for each point whose choice is missing or cannot be, by its name. */
export function pointFaults(
  lines: readonly MappingLine[],
  choices: Readonly<Record<string, PointChoice>>,
  present: Present,
): Map<string, string> {
  const faults = new Map<string, string>();
  const coming = new Set(lines.map((line) => line.name));
  const taken = new Map<string, string>();
  for (const { externalName, kind, zoneId } of present.points)
    if (zoneId !== null && !coming.has(externalName)) taken.set(placeOf({ kind, zoneId }), externalName);
  for (const line of lines) {
    const choice = choices[line.name];
    if (!choice) faults.set(line.name, `${line.name}: say what it is, or leave it out.`);
    if (!choice || choice.skip) continue;
    const fault = choiceFault(line, choice, present.zoneIds);
    const other = choice.zoneId === null ? undefined : taken.get(placeOf(choice));
    if (fault) faults.set(line.name, fault);
    else if (other && choice.continues !== other)
      faults.set(
        line.name,
        `${line.name}: ${other} is already the ${choice.kind.replaceAll("-", " ")} of that zone. Leave one of them out.`,
      );
    else taken.set(placeOf(choice), line.name);
  }
  return faults;
}

const placeOf = ({ kind, zoneId }: Pick<Mapped, "kind" | "zoneId">): string => `${kind}/${zoneId}`;

function choiceFault(line: MappingLine, choice: Mapped, zoneIds: ReadonlySet<number>): string | null {
  const { name, unitAsk } = line;
  if (choice.zoneId !== null && !zoneIds.has(choice.zoneId))
    return `${name}: this zone does not exist in the building. Add it first, or choose another.`;
  if (choice.zoneId === null && !BUILDING_KINDS.includes(choice.kind))
    return `${name}: choose the zone it belongs to, or leave it out.`;
  if (unitAsk && !choice.unit) return `${name}: the file does not say its unit. Choose one.`;
  return unitFault(line, choice);
}

/** Whether the point's unit, or the one chosen for it, is one that its kind can have. */
function unitFault({ name, summary }: MappingLine, choice: Mapped): string | null {
  const unit = summary.unit ?? FILE_UNITS.find((known) => known === choice.unit) ?? null;
  const none = new Float64Array(0);
  const verdict = convertToStored(
    { name, kind: summary.kind, unit, tsUtcSeconds: none, values: none, stateNames: summary.states },
    choice.kind,
  );
  return verdict.status === "ok" ? null : verdict.sentence;
}

/** A sentence for each question about a whole file that is not answered, or not by one of its choices. */
export function fileFaults(
  fileAsks: readonly Pick<FileAsk, "runId" | "fileName" | "ask">[],
  answersByRun: Readonly<Record<string, FileAnswers>>,
): Map<string, string> {
  const faults = new Map<string, string>();
  for (const { runId, fileName, ask } of fileAsks) {
    const given = givenAnswer(ask, answersByRun[String(runId)] ?? {});
    const fits = given.length > 0 && (ask.what === "time-start" || given.every((each) => ask.choices.includes(each)));
    if (!fits) faults.set(`answers.${runId}.${ask.what}`, `${fileName}: ${ask.question}`);
  }
  return faults;
}

function givenAnswer(ask: TrendAsk, answers: FileAnswers): string[] {
  if (ask.what === "flag-column") return answers.flagColumn?.good ?? [];
  const given = answerTo(ask, answers);
  return given ? [given] : [];
}
