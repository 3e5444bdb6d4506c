import type { NamedVersion } from "@/db/queries/mapping-profiles";
import type { TrendAsk, TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import type { FileAnswers } from "../trend-imports/run-input";
import { isOnePoint, shapeOf } from "./file-shape";
import type { ProfileContent, ProfilePoint } from "./profile-content";

/** Where a file and a profile part. `point` names the one it is about; without, it is about the whole file. */
export type Difference = { what: "new" | "missing" | "changed"; point?: string; sentence: string };

/** A profile held against a file: what it answers of the file's questions, and where the two part. */
export type ProfileFit = {
  version: NamedVersion;
  content: ProfileContent;
  answers: FileAnswers;
  differences: Difference[];
};

/** Holds a file against one version of a profile, by what the file itself says. */
export function fitOf(
  { version, content }: { version: NamedVersion; content: ProfileContent },
  inspection: TrendInspection,
): ProfileFit {
  const { answers, differences } = answersFor(content, inspection);
  return {
    version,
    content,
    answers,
    differences: [...shapeDifferences(content, inspection), ...differences, ...pointDifferences(content, inspection)],
  };
}

/** Share of the file's points that the profile knows, 0 to 1. */
export function overlapOf(content: ProfileContent, { points }: TrendInspection): number {
  const known = points.filter((point) => content.points[point.name]).length;
  return points.length === 0 ? 0 : known / points.length;
}

const DELIMITER_WORD: Record<string, string> = { ",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars" };
const DATE_WORD: Record<string, string> = {
  mdy: "month first",
  dmy: "day first",
  ymd: "year first",
  epoch: "seconds since 1970",
  elapsed: "seconds since a start",
  serial: "spreadsheet day numbers",
};
const LAYOUT_WORD: Record<string, string> = {
  wide: "one column a point",
  long: "one row a reading",
  "one-point": "one point a file",
  pairs: "a time column a point",
  stacked: "sections under each other",
  zip: "a zip of files",
};

function shapeDifferences({ shape: before, answers }: ProfileContent, inspection: TrendInspection): Difference[] {
  const now = shapeOf(inspection);
  const dates = before.dateFormat ?? answers.dateOrder ?? null;
  const pairs = [
    ["It is laid out as", before.layout, now.layout, LAYOUT_WORD],
    ["Its columns are split by", before.delimiter, now.delimiter, DELIMITER_WORD],
    ["Its dates are written", dates, now.dateFormat, DATE_WORD],
  ] as const;
  return pairs.flatMap(([words, then, is, names]): Difference[] =>
    then === null || is === null || then === is
      ? []
      : [{ what: "changed", sentence: `${words} ${names[is] ?? is}, before ${names[then] ?? then}.` }],
  );
}

/** What the profile answers of the file's own questions, and those that it cannot. */
function answersFor(content: ProfileContent, { ask }: TrendInspection): Pick<ProfileFit, "answers" | "differences"> {
  const answers: FileAnswers = {};
  const differences: Difference[] = [];
  for (const question of ask) {
    if (question.what === "unit") continue;
    const answer = answerOf(content, question);
    if (answer) Object.assign(answers, answer);
    else
      differences.push({ what: "changed", sentence: `It asks what the profile does not answer: ${question.question}` });
  }
  return { answers, differences };
}

function answerOf({ answers, shape }: ProfileContent, { what, choices }: TrendAsk): FileAnswers | null {
  if (what === "date-order") {
    const order =
      answers.dateOrder ?? (shape.dateFormat === "mdy" || shape.dateFormat === "dmy" ? shape.dateFormat : null);
    return order ? { dateOrder: order } : null;
  }
  // Every file that counts seconds may have begun at another time.
  if (what === "time-start") return null;
  if (what === "clock") return answers.clock ? { clock: answers.clock } : null;
  if (what === "value-column")
    return answers.valueColumn && choices.includes(answers.valueColumn) ? { valueColumn: answers.valueColumn } : null;
  const flags = answers.flagColumn;
  if (!flags || !choices.every((flag) => flags.seen.includes(flag))) return null;
  const good = flags.good.filter((flag) => choices.includes(flag));
  return good.length > 0 ? { flagColumn: { good } } : null;
}

function pointDifferences({ points: before }: ProfileContent, inspection: TrendInspection): Difference[] {
  const differences: Difference[] = [];
  for (const { name, unitAsWritten, kind } of inspection.points) {
    const known = before[name];
    if (!known) differences.push({ what: "new", point: name, sentence: `${name} is new.` });
    else if (known.unitAsWritten !== unitAsWritten)
      differences.push(changedUnit(name, known.unitAsWritten, unitAsWritten));
    else if (known.holds !== kind)
      differences.push({
        what: "changed",
        point: name,
        sentence: `${name} holds ${HOLDS[kind]}, before ${HOLDS[known.holds]}.`,
      });
    else if (known.choice.skip && known.choice.undecided)
      differences.push({ what: "changed", point: name, sentence: `${name} was left out for that time only.` });
    else if (!unitStillFits(known, name, inspection))
      differences.push({
        what: "changed",
        point: name,
        sentence: `${name} has no unit, and the profile says none that it may have.`,
      });
  }
  if (isOnePoint(shapeOf(inspection).layout)) return differences;
  const present = new Set(inspection.points.map((point) => point.name));
  for (const name of Object.keys(before))
    if (!present.has(name)) differences.push({ what: "missing", point: name, sentence: `${name} is gone.` });
  return differences;
}

const HOLDS = { numeric: "numbers", state: "words or states" };

function changedUnit(point: string, before: string | null, now: string | null): Difference {
  const words = (unit: string | null) => (unit === null ? "without a unit" : `in ${unit}`);
  return { what: "changed", point, sentence: `${point} is written ${words(now)}, before ${words(before)}.` };
}

function unitStillFits({ choice }: ProfilePoint, name: string, { ask }: TrendInspection): boolean {
  const question = ask.find((each) => each.what === "unit" && each.points?.includes(name));
  if (!question || choice.skip) return true;
  return choice.unit !== null && question.choices.includes(choice.unit);
}
