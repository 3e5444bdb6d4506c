import { voteWords } from "../thermal-sensation";
import type { MailText } from "./mail-kinds";

export type MailedReport = {
  /** When it was made, as the building's clock has it. */
  at: string;
  zone: string;
  /** Null where the building's mail names no desk, or there is none. */
  desk: string | null;
  thermalSensation: number;
  preference: "cooler" | "no-change" | "warmer";
  /** Empty where the building's mail does not repeat what people wrote. */
  note: string;
  /** The report's own page, behind the sign-in. */
  address: string;
};

/** Reports that a mail lists one by one; of more it says how many there are. */
export const MOST_LISTED = 100;

const WISH = { cooler: "would like it cooler", "no-change": "would like no change", warmer: "would like it warmer" };
const counted = (n: number): string => (n === 1 ? "1 new comfort report" : `${n} new comfort reports`);

/** What facilities people are told of new reports, oldest first: when, where, the vote and the wish; never an address. */
export function newReportsMail(
  building: string,
  reports: readonly MailedReport[],
  { inbox, settings }: { inbox: string; settings: string },
): MailText {
  const zones = [...new Set(reports.map(({ zone }) => zone))];
  const where = zones.length === 1 ? `zone ${zones[0]}` : `${zones.length} zones`;
  const listed = reports.slice(0, MOST_LISTED).map((report) => {
    const place = report.desk === null ? `zone ${report.zone}` : `zone ${report.zone}, desk ${report.desk}`;
    const lines = [
      `${report.at}, ${place}: ${voteWords(report.thermalSensation)}, ${WISH[report.preference]}`,
      ...(report.note === "" ? [] : report.note.split(/\r?\n/).map((line) => `  > ${line}`)),
      `  ${report.address}`,
    ];
    return lines.join("\n");
  });
  const more = reports.length - listed.length;
  return {
    subject: `${counted(reports.length)}, ${where} (${building})`,
    text: [
      ...listed,
      ...(more > 0 ? [`and ${more} more: ${inbox}`] : []),
      `All open reports: ${inbox}\nWho gets this mail: ${settings}`,
    ].join("\n\n"),
  };
}
