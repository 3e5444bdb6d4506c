import type { TemperatureGuidance } from "@/lib/comfort-reports/temperature-guidance";
import type { Building } from "@/lib/services/buildings/find";
import type { readTargetCurve } from "@/lib/services/overcooling/target-curve";
import { formatNumber, formatTemperature, type TemperatureUnit } from "@/lib/units/format";
import { celsiusFromFahrenheit } from "@/lib/units/temperature";

export type Curve = Awaited<ReturnType<typeof readTargetCurve>>;
export type Point = Curve["points"][number];
type Shown = Pick<Building, "temperatureUnit" | "targetZoneAirTempC">;

/** Drawing area [px of the picture's own]. */
export const FRAME = {
  width: 680,
  left: 64,
  right: 96,
  cost: { top: 24, bottom: 220 },
  votes: { top: 268, bottom: 388 },
};

export type CurvePicture = {
  band: string;
  middle: string;
  warmer: string;
  cooler: string;
  ticks: { x: number; label: string; isTarget: boolean }[];
  costTicks: { y: number; label: string }[];
  voteTicks: { y: number; label: string }[];
  ends: { middle: number; warmer: number; cooler: number; x: number };
};

/** The curve as paths: cost with its range above, field votes below, on one scale of targets. */
export function curvePicture(
  points: readonly Point[],
  { temperatureUnit, targetZoneAirTempC }: Shown,
  money: (value: number) => string,
): CurvePicture {
  const first = points[0] as Point;
  const last = points.at(-1) as Point;
  const span = Math.max(0.1, last.targetC - first.targetC);
  const x = (targetC: number): number =>
    FRAME.left + ((targetC - first.targetC) / span) * (FRAME.width - FRAME.left - FRAME.right);
  const step = tickStep(Math.max(1, ...points.map((each) => each.p90)));
  const top = step * Math.ceil(Math.max(1, ...points.map((each) => each.p90)) / step);
  const bottom = Math.min(0, ...points.map((each) => each.p10));
  const cost = scale(bottom, top, FRAME.cost);
  const votes = scale(0, 0.5, FRAME.votes);
  const line = (of: (point: Point) => number, from: readonly Point[] = points): string =>
    from.map((each) => `${round(x(each.targetC))},${round(of(each))}`).join(" L ");
  return {
    band: `M ${line((each) => cost(each.p90))} L ${line((each) => cost(each.p10), points.toReversed())} Z`,
    middle: `M ${line((each) => cost(each.p50))}`,
    warmer: `M ${line((each) => votes(each.votes.warmer))}`,
    cooler: `M ${line((each) => votes(each.votes.cooler))}`,
    ticks: points.map((each) => ({
      x: round(x(each.targetC)),
      label: formatTemperature(each.targetC, temperatureUnit).value,
      isTarget: each.targetC === targetZoneAirTempC,
    })),
    costTicks: Array.from({ length: Math.round(top / step) + 1 }, (_, k) => ({
      y: round(cost(k * step)),
      label: money(k * step),
    })),
    voteTicks: [0, 0.25, 0.5].map((share) => ({ y: round(votes(share)), label: `${Math.round(100 * share)} %` })),
    ends: {
      x: round(x(last.targetC)),
      middle: round(cost(last.p50)),
      warmer: round(votes(last.votes.warmer)),
      cooler: round(votes(last.votes.cooler)),
    },
  };
}

const round = (value: number): number => Number(value.toFixed(1));

const scale =
  (low: number, high: number, { top, bottom }: { top: number; bottom: number }) =>
  (value: number): number =>
    bottom - ((value - low) / (high - low)) * (bottom - top);

/** A round step that cuts the scale into two to five. */
function tickStep(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  const share = most / power;
  return power * (share > 5 ? 2 : share > 2 ? 1 : 0.5);
}

export const percent = (share: number): string => formatNumber(100 * share, { decimals: 0 });

/** Why the target is what it is. */
export function targetLede({ temperatureUnit, targetZoneAirTempC }: Shown): string {
  const temp = (value: number) => formatTemperature(value, temperatureUnit).text;
  const own =
    targetZoneAirTempC === 23
      ? `The target is ${temp(23)}, the default`
      : `The target is ${temp(targetZoneAirTempC)}, this building's own; the default is ${temp(23)}`;
  return `${own}. In field votes of air-conditioned offices in summer as many people want it warmer as cooler near ${temp(22.3)}; ${temp(23)} is the warm end of what they bear out, and above ${temp(24.5)} people need fans. A warmer target counts more as overcooling and leaves more people too warm: both are below.`;
}

/** What a published guidance says, temperatures in the building's unit. */
export function guidanceWords(guidance: TemperatureGuidance, unit: TemperatureUnit): string {
  const figures = guidance.figures.map(({ what, value, unit: published }) => {
    if (published === "%" || published === "m/s") return `${what} ${value}\u2009${published}`;
    const tempC = published === "°F" ? celsiusFromFahrenheit(value) : value;
    const shown = formatTemperature(tempC, unit);
    return `${what} ${shown.text}`;
  });
  return [...figures, ...(guidance.absent ?? []).map(({ words }) => words)].join(", ");
}
