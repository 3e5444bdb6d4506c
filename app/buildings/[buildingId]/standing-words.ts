import type { Building } from "@/lib/services/buildings/find";
import type { Input } from "@/lib/services/kept/inputs";
import type { Behind, Kept } from "@/lib/services/kept/read-kept";
import type { ImportAtWork } from "@/lib/services/trend-imports/at-work";
import { formatLocal } from "@/lib/time/format";

/** Of when a page's figures are, when they are not of now, and how far the next ones are: in words. */
export type StandingLine = {
  title: string;
  sentences: string[];
  /** Share that is done, 0 to 1; null when that is not known. */
  doneFraction: number | null;
};

const WORDS: Record<Input, string> = {
  trends: "newer trends",
  mapping: "a change of what the points are",
  zones: "a change of the zones or desks",
  devices: "a change of the devices",
  reports: "newer comfort reports",
  building: "a change of the settings",
  assumptions: "a change of the assumptions",
  weather: "another weather year",
  bills: "a change of the electricity bills",
  proposals: "a step of a proposal or a verification",
  imports: "a file that has come in since",
  program: "a newer version of the calculation",
};

/** What changes with every import: not named beside it. */
const OF_IMPORTS: readonly Input[] = ["trends", "mapping", "imports"];

/** Null when every figure is of now. Of several results that are behind, the oldest speaks. */
export function standingLine(
  shown: readonly Kept<unknown>[],
  building: Pick<Building, "timeZone">,
  atWork: readonly ImportAtWork[],
): StandingLine | null {
  const behind = shown.flatMap((each) => each.behind ?? []);
  if (behind.length === 0) return null;
  const stored = atWork.filter(({ state }) => state === "running" || state === "queued");
  const progress = behind.find((each) => each.progress)?.progress ?? null;
  const [first] = stored;
  return {
    title: titleOf(shown, behind, building, stored.length),
    sentences: [
      ...(first ? [importSentence(first, stored.length)] : []),
      ...failureSentences(behind, building),
      ...(first ? [] : [workSentence(behind)]),
    ],
    doneFraction: first ? readFraction(first) : progress ? progress.done / Math.max(1, progress.of) : null,
  };
}

function titleOf(
  shown: readonly Kept<unknown>[],
  behind: readonly Behind[],
  building: Pick<Building, "timeZone">,
  imports: number,
): string {
  const times = shown.map(({ workedOutAtMs }) => workedOutAtMs);
  const oldest = Math.min(...times.map((time) => time ?? Number.NEGATIVE_INFINITY));
  if (oldest === Number.NEGATIVE_INFINITY) return "Being worked out for the first time";
  const changed = [...new Set(behind.flatMap((each) => each.changed))];
  const named = imports > 0 ? changed.filter((name) => !OF_IMPORTS.includes(name)) : changed;
  const reasons = [
    ...(imports > 0 ? [imports === 1 ? "the import now running" : "the imports now running"] : []),
    ...named.map((name) => WORDS[name]),
  ];
  return `Worked out ${formatLocal(oldest, building.timeZone, "date-time")}, before ${listed(reasons)}`;
}

function importSentence(run: ImportAtWork, count: number): string {
  const read = run.state === "running" ? `, ${Math.floor(100 * readFraction(run))} % of it read` : "";
  const more = count > 1 ? `, and ${count - 1} more ${count === 2 ? "file waits" : "files wait"}` : "";
  return `${run.fileName} is being imported${read}${more}. The figures follow by themselves when that is done.`;
}

const readFraction = ({ bytesRead, bytesToRead }: ImportAtWork): number =>
  bytesToRead > 0 ? Math.min(1, bytesRead / bytesToRead) : 0;

function failureSentences(behind: readonly Behind[], { timeZone }: Pick<Building, "timeZone">): string[] {
  const failure = behind.find((each) => each.failure)?.failure;
  if (!failure) return [];
  const at = formatLocal(failure.atMs, timeZone, "date-time");
  return [`The try of ${at} failed. ${failure.message} What was shown before stays.`];
}

function workSentence(behind: readonly Behind[]): string {
  const { progress } = behind.find((each) => each.progress) ?? {};
  if (progress) return `At work: ${progress.done} of ${progress.of} zones done. The figures follow by themselves.`;
  if (behind.some((each) => each.failure)) return "It is tried again a minute later, when this page is open.";
  return "The figures follow by themselves.";
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "something changed";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
