import type { AnswerMailState } from "@/lib/comfort-reports/mail/mail-kinds";
import type { MailRecipientView } from "@/lib/services/report-mail/recipients";
import type { UnsentAnswer } from "@/lib/services/report-mail/standing";
import { formatLocal } from "@/lib/time/format";

export const SECURITY_WORDS = {
  tls: "TLS from the beginning (usually port 465)",
  starttls: "STARTTLS, refused where the server does not offer it (usually port 587)",
  none: "none: only for a server that asks for no sign-in",
} as const;

export const hourWords = (hour: number): string => `${String(hour).padStart(2, "0")}:00`;

export type RecipientLine = {
  id: number;
  address: string;
  zones: string;
  pace: string;
  last: string;
  standing: string;
};

/** Who gets mail, and how it stands with it. */
export const recipientLines = (rows: readonly MailRecipientView[], timeZone: string): RecipientLine[] =>
  rows.map(({ id, address, zoneCodes, dailyHour, lastSentAtMs, ...queue }) => ({
    id,
    address,
    zones: zoneCodes?.join(", ") ?? "all",
    pace: dailyHour === null ? "at once" : `daily at ${hourWords(dailyHour)}`,
    last: lastSentAtMs === null ? "none yet" : formatLocal(lastSentAtMs, timeZone, "date-time"),
    standing: standingWords(queue, timeZone),
  }));

type Queue = Pick<MailRecipientView, "failures" | "lastFault" | "nextTryAtMs" | "givenUpAtMs">;

function standingWords({ failures, lastFault, nextTryAtMs, givenUpAtMs }: Queue, timeZone: string): string {
  const tries = failures === 1 ? "once" : `${failures} times`;
  if (givenUpAtMs !== null)
    return `failed: given up ${formatLocal(givenUpAtMs, timeZone, "date-time")} after it was tried ${tries}. ${lastFault}`;
  if (failures > 0)
    return `tried ${tries}, again from ${formatLocal(nextTryAtMs, timeZone, "date-time")}. ${lastFault}`;
  return "no problems";
}

export const ANSWER_STATE_WORDS: Readonly<Record<AnswerMailState, string>> = {
  waiting: "waiting to be mailed",
  sent: "mailed",
  failed: "mail failed",
  "no-address": "not mailed: the address was deleted before",
};

export type UnsentLine = { reportId: number; at: string; state: string; reason: string };

export const unsentLines = (rows: readonly UnsentAnswer[], timeZone: string): UnsentLine[] =>
  rows.map(({ reportId, answeredAtMs, state, fault, nextTryAtMs }) => ({
    reportId,
    at: formatLocal(answeredAtMs, timeZone, "date-time"),
    state: ANSWER_STATE_WORDS[state],
    reason:
      state === "waiting" && fault !== ""
        ? `${fault} Tried again from ${formatLocal(nextTryAtMs, timeZone, "date-time")}.`
        : fault,
  }));
