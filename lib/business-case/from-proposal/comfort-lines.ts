import type { ExpectedReports, LivePicture } from "@/lib/proposals/live-picture";
import type { CaseComfortLine } from "../case-input";

/**
 * What the proposed variant makes of comfort, on either side. Intervals of reports are of what a year may bring; without
 * reports, when so few people have sent any that figures could be traced to them.
 */
export function comfortLines(
  { outsideComfort, cold, hot, heatersGiven }: LivePicture,
  reportsWithheld: boolean,
): CaseComfortLine[] {
  const reports = (label: string, expected: ExpectedReports | null): CaseComfortLine[] =>
    expected && !reportsWithheld
      ? [
          {
            label,
            unit: "a year",
            decimals: 1,
            before: expected.before,
            after: expected.after,
            interval: { low: expected.low, high: expected.high, level: 90 },
          },
        ]
      : [];
  return [
    {
      label: "Share of occupied hours outside the comfort range",
      unit: "%",
      decimals: 1,
      before: outsideComfort.before * 100,
      after: outsideComfort.after * 100,
      interval: null,
    },
    ...reports("Reports of too cold in the cooling season", cold),
    ...reports("Reports of too warm in the cooling season", hot),
    {
      label: "Space heaters in use",
      unit: "",
      decimals: 1,
      before: heatersGiven.of,
      after: heatersGiven.of - heatersGiven.expected,
      interval: { low: heatersGiven.of - heatersGiven.high, high: heatersGiven.of - heatersGiven.low, level: 80 },
    },
  ];
}
