import { describe, expect, it } from "vitest";
import { LANGUAGES } from "@/app/report/messages/choose-language";
import { ANSWER_LANGUAGES, answerMail } from "@/lib/comfort-reports/mail/answer-mail";
import { nextDailyMs } from "@/lib/comfort-reports/mail/daily-hour";
import { MOST_LISTED, newReportsMail } from "@/lib/comfort-reports/mail/new-reports-mail";
import { waitAfterMs } from "@/lib/comfort-reports/mail/retry";
import { zoneTable } from "@/lib/time/zone-table";

const REPORT = {
  at: "1 Jul 2026, 10:00",
  zone: "2-14",
  desk: null,
  thermalSensation: -2,
  preference: "warmer" as const,
  note: "",
  address: "https://ledger.example.org/buildings/1/comfort-reports/7",
};
const PAGES = { inbox: "https://ledger.example.org/inbox", settings: "https://ledger.example.org/mail" };

describe("the hour of a day's mail", () => {
  const zone = zoneTable("Europe/Berlin");
  const next = (from: string, hour: number) => new Date(nextDailyMs(Date.parse(from), zone, hour)).toISOString();

  it.each([
    ["later on the same day", "2026-07-01T04:00:00Z", 7, "2026-07-01T05:00:00.000Z"],
    ["on the next day when it has struck", "2026-07-01T05:00:00Z", 7, "2026-07-02T05:00:00.000Z"],
    ["at the end of an hour that the clocks skip", "2026-03-28T12:00:00Z", 2, "2026-03-29T01:00:00.000Z"],
    ["the first of an hour that comes twice", "2026-10-24T12:00:00Z", 2, "2026-10-25T00:00:00.000Z"],
    ["once only on that day", "2026-10-25T00:00:00Z", 2, "2026-10-26T01:00:00.000Z"],
  ])("is %s", (_, from, hour, expected) => expect(next(from, hour)).toBe(expected));
});

it("waits a minute, two, four, and six hours at most", () => {
  expect([1, 2, 3, 9, 10, 60].map((n) => waitAfterMs(n) / 60_000)).toEqual([1, 2, 4, 256, 360, 360]);
});

it("lists a hundred reports and says how many more there are", () => {
  const mail = newReportsMail("Tower", Array(MOST_LISTED + 3).fill(REPORT), PAGES);
  expect(mail.subject).toBe("103 new comfort reports, zone 2-14 (Tower)");
  expect(mail.text.match(/Cool/g)).toHaveLength(MOST_LISTED);
  expect(mail.text).toContain("and 3 more: https://ledger.example.org/inbox");
});

it("answers in every language of the form, and without an address to follow where there is none", () => {
  expect([...ANSWER_LANGUAGES].sort()).toEqual(LANGUAGES.map(({ tag }) => tag).sort());
  const texts = ANSWER_LANGUAGES.map((language) => answerMail("Done.", { language, at: "today", follow: null }));
  expect(new Set(texts.map(({ subject }) => subject)).size).toBe(ANSWER_LANGUAGES.length);
  for (const { text } of texts) expect(text).not.toContain("http");
});
