import type { BothSides } from "@/lib/services/both-sides/expect";
import { formatLocal } from "@/lib/time/format";
import { formatNumber, formatTemperature, formatTemperatureDifference } from "@/lib/units/format";

type Sides = NonNullable<BothSides>;
type Step = Sides["steps"][number];

const at = ({ steps }: Sides, shiftK: number): Step | undefined => steps.find((step) => step.shiftK === shiftK);
const whole = (value: number): string => formatNumber(value, { decimals: value < 10 ? 1 : 0 });

/** The page's one sentence: what a kelvin more would change on both sides. */
export function sidesLede(sides: BothSides, unit: "C" | "F"): string {
  const [now, more] = sides ? [at(sides, 0), at(sides, 1)] : [];
  if (!now || !more) return "Fewer people too cold are more people too warm: both are shown, always together.";
  return `With zone air ${formatTemperatureDifference(1, unit).text} warmer in the cooling season, reports of too cold go from ${whole(now.expected.tooCold.median)} to ${whole(more.expected.tooCold.median)} a year, and those of too warm from ${whole(now.expected.tooWarm.median)} to ${whole(more.expected.tooWarm.median)}.`;
}

export type SideLine = Record<
  "key" | "shift" | "mean" | "tooCold" | "tooColdRange" | "tooWarm" | "tooWarmRange" | "warmer" | "cooler",
  string
>;

const percent = ({ median, low, high }: Step["warmer"]): string =>
  `${Math.round(100 * median)} % (${Math.round(100 * low)}-${Math.round(100 * high)})`;
const range = ({ low, high }: { low: number; high: number }): string => `${whole(low)}-${whole(high)}`;

/** Steps as the table shows them. */
export const sideLines = ({ steps }: Sides, unit: "C" | "F"): SideLine[] =>
  steps.map(({ shiftK, meanAirTempC, expected, warmer, cooler }) => ({
    key: String(shiftK),
    shift: shiftK === 0 ? "as it is" : `${shiftK > 0 ? "+" : ""}${formatTemperatureDifference(shiftK, unit).text}`,
    mean: formatTemperature(meanAirTempC, unit).text,
    tooCold: whole(expected.tooCold.median),
    tooColdRange: range(expected.tooCold),
    tooWarm: whole(expected.tooWarm.median),
    tooWarmRange: range(expected.tooWarm),
    warmer: percent(warmer),
    cooler: percent(cooler),
  }));

/** What the figures rest on, and what they leave out. */
export function recordWords({ record, deskHours, steps }: Sides, timeZone: string): string {
  const beyond = steps.filter(({ expected }) => expected.beyondVotesHours > 0.05 * deskHours);
  return [
    `They rest on ${record.personDays} person-days that wanted a change since ${formatLocal(record.fromUtcSeconds * 1000, timeZone, "date")} and ${formatNumber(deskHours, { decimals: 0 })} occupied desk-hours of the cooling season in the last ${record.yearDays} recorded days.`,
    record.leftOut > 0
      ? `${record.leftOut} reports are left out: no zone air is recorded for their moment, or no desks.`
      : "",
    record.without.length > 0 ? `Zones without desks or zone air: ${record.without.join(", ")}.` : "",
    beyond.length > 0
      ? "Steps that bring more than a twentieth of the hours beyond 20 to 27 °C draw the votes' lines out."
      : "",
  ]
    .filter(Boolean)
    .join(" ");
}
