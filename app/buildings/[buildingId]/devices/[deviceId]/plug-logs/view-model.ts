import type { PlugLogView } from "@/lib/services/plug-logs/read";
import { formatLocal } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";

type LogRow = Omit<PlugLogView, "season" | "wholeDays" | "workings">;

/** First and last reading on the building's wall clock. */
export const logSpan = (log: Pick<LogRow, "fromMs" | "toMs">, timeZone: string): string =>
  `${formatLocal(log.fromMs, timeZone, "date-time")} to ${formatLocal(log.toMs, timeZone, "date-time")}`;

export function logLine(log: LogRow, timeZone: string) {
  const { longestFullRun, loggedHours } = log.figures;
  return {
    id: log.id,
    span: logSpan(log, timeZone),
    loggedHours: formatNumber(loggedHours, { decimals: 1 }),
    longestRun: longestFullRun ? formatNumber(longestFullRun.hours, { decimals: 1 }) : "",
    raw: rawWords(log, timeZone),
    fileName: log.fileName,
  };
}

export function rawWords({ rawDeletedAtMs }: Pick<LogRow, "rawDeletedAtMs">, timeZone: string): string {
  return rawDeletedAtMs === null ? "kept for review" : `deleted ${formatLocal(rawDeletedAtMs, timeZone, "date")}`;
}

/** The season that the form offers first: six weeks before and after the middle of the log. */
export function offeredSeason({ fromMs, toMs }: Pick<LogRow, "fromMs" | "toMs">): { from: string; to: string } {
  const at = (fromMs + toMs) / 2;
  const day = (offset: number): string => new Date(at + offset * 86_400_000).toISOString().slice(0, 10);
  return { from: day(-45), to: day(46) };
}

/** One sentence about a log: what the page says first. */
export function logLede({ figures, wholeDays }: Pick<PlugLogView, "figures" | "wholeDays">): string {
  const on = formatNumber(figures.onHours, { decimals: 1 });
  const logged = formatNumber(figures.loggedHours, { decimals: 1 });
  const days = wholeDays === 1 ? "1 whole day" : `${wholeDays} whole days`;
  return `${formatNumber(figures.energyKwh, { decimals: 2 })} kWh in ${logged} h, ${on} h of them on; ${days}.`;
}
