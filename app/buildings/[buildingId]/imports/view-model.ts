import type { ImportRun } from "@/lib/services/imports/history";
import type { WeatherSummary } from "@/lib/services/weather/read";
import { formatNumber } from "@/lib/units/format";

export const STATE_WORDS: Record<ImportRun["state"], string> = {
  received: "waits for its turn",
  inspecting: "being read",
  waiting: "waits for its mapping",
  queued: "mapped, waits for its turn",
  running: "being imported",
  done: "imported",
  interrupted: "interrupted",
  refused: "refused",
  failed: "failed",
  cancelled: "cancelled",
  undone: "undone",
};

export type OutcomeLine = { key: string; kind: "done" | "note" | "caution"; title: string; message: string };

/** What the upload route said of each file; nothing when the address holds none or something else. */
export function outcomeLines(text: string | undefined): OutcomeLine[] {
  if (!text) return [];
  try {
    const { shown, counts } = JSON.parse(text) as {
      shown: [string, string, string][];
      counts: { all: number; refused: number };
    };
    const isBad = ([state]: [string, string, string]) => state === "refused" || state === "failed";
    const refused = shown.filter(isBad);
    const taken = shown.filter((each) => !isBad(each));
    const lines = refused.map(
      ([state, fileName, message], i): OutcomeLine => ({
        key: `refused-${i}`,
        kind: "caution",
        title: fileName ? `${fileName} ${state === "failed" ? "failed" : "was refused"}` : "Nothing was brought in",
        message,
      }),
    );
    const unseen = counts.refused - refused.length;
    if (unseen > 0)
      lines.push({
        key: "refused-more",
        kind: "caution",
        title: unseen === 1 ? "One more file was refused" : `${unseen} more files were refused`,
        message: "The history below has each with its reason.",
      });
    if (counts.all > counts.refused) {
      const messages = new Set(taken.map(([, , message]) => message));
      const files = counts.all - counts.refused;
      lines.unshift({
        key: "taken",
        kind: taken.every(([state]) => state === "imported") ? "done" : "note",
        title: files === 1 ? (taken[0]?.[1] ?? "One file") : `${files} files`,
        message: [...messages].join(" "),
      });
    }
    return lines;
  } catch {
    return [];
  }
}

export function waitingSentence(count: number): string | null {
  if (count === 0) return null;
  return count === 1 ? "One trend file waits for its mapping" : `${count} trend files wait for their mapping`;
}

/** A figure of the history; nothing for a file that has not come to its rows. */
export const settledFigure = ({ state }: Pick<ImportRun, "state">, value: number): string =>
  state === "done" || state === "undone" ? formatNumber(value, { decimals: 0 }) : "";

export const atWorkTitle = (count: number): string => (count === 1 ? "1 file at work" : `${count} files at work`);

export function weatherSentence(weather: WeatherSummary | null): string {
  return weather
    ? `${weather.station}, from ${weather.fileName}.`
    : "No weather year yet. Bring an EPW or TMY3 file of a station nearby: figures are carried to a whole year with it.";
}
