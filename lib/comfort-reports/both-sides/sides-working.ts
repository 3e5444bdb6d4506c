import type { Term, Working } from "@/lib/working/working";
import type { Expected, PlannedZone } from "./expected-reports";
import { logistic, rateAt } from "./predictor";
import type { ReportModel, WeightedFit } from "./report-model";
import { REFERENCE_TEMP_C, VOTE_PRIOR_SOURCE } from "./vote-prior";
import type { Share } from "./wanted-shares";

/** Which side of a temperature a figure is of: 0 too cold, 1 too warm. */
export type Side = 0 | 1;

const REPORTS = ["too cold", "too warm"] as const;
const WISHES = ["warmer", "cooler"] as const;
const WEIGHT_SOURCE =
  "how well a spread of zones about their floor of this size explains the reports: marginal likelihood (Tierney and Kadane 1986)";
const FIT_SOURCE = "this building's reports against its occupied desk-hours, beginning at the field votes";

/**
 * Working of the reports of one side that are expected in a year when all zone air is moved by `shiftK` [K]: over the spreads of
 * zones that were tried, each down to the desk-hours and the rate of every degree. Its result is `expectedReports`' median.
 */
export function expectedWorking(
  model: ReportModel,
  zones: readonly PlannedZone[],
  { side, shiftK, expected }: { side: Side; shiftK: number; expected: Expected },
): Working {
  const parts = model.fits.map((fit) => totalWorking(model, fit, zones, side, shiftK));
  return {
    formula: `R = exp(${model.fits.map((_, k) => `w_${k + 1} * ln(R_${k + 1})`).join(" + ")})`,
    terms: model.fits.flatMap((fit, k): Term[] => [
      weightTerm(fit, k),
      {
        symbol: `R_${k + 1}`,
        label: `Reports if zones differ by ${fit.zoneDeviation} on the log of a rate`,
        value: (parts[k] as Working).result.value,
        unit: "a year",
        origin: "computed",
        working: parts[k],
      },
    ]),
    result: {
      symbol: "R",
      label: `person-days a year that report ${REPORTS[side]}`,
      value: expected.median,
      unit: "a year",
    },
    notes: [
      `${spanNote(expected, "")} It comes from the curvature of the fit: how well rate, shares, floors and zones are known together.`,
      `The count that is seen in a year scatters about the expected number as well: ${expected.countLow} to ${expected.countHigh} with a chance of 90 %.`,
    ],
    source: "rates of reports by exposure, fitted by Laplace's approximation; own model",
  };
}

const spanNote = ({ low, high }: { low: number; high: number }, unit: string): string =>
  `With a chance of 90 % it lies between ${low.toPrecision(3)} and ${high.toPrecision(3)}${unit}.`;

const weightTerm = (fit: WeightedFit, k: number): Term => ({
  symbol: `w_${k + 1}`,
  label: `Weight of a spread of zones of ${fit.zoneDeviation}`,
  value: fit.weight,
  unit: "",
  origin: "computed",
  source: WEIGHT_SOURCE,
});

type Degree = { airTempC: number; deskHours: number; reports: number };

function totalWorking(
  model: ReportModel,
  fit: WeightedFit,
  zones: readonly PlannedZone[],
  side: Side,
  shiftK: number,
): Working {
  const degrees = new Map<number, Degree>();
  for (const { zone: name, bins } of zones) {
    const zone = model.zones.indexOf(name);
    const floor = model.floorOfZone[zone] as number;
    for (const { airTempC, deskHours } of bins) {
      const { rate } = rateAt(fit, side, { zone, floor }, airTempC + shiftK);
      const degree = degrees.get(airTempC) ?? { airTempC, deskHours: 0, reports: 0 };
      degree.deskHours += deskHours;
      degree.reports += rate * deskHours;
      degrees.set(airTempC, degree);
    }
  }
  const rows = [...degrees.values()].filter(({ deskHours }) => deskHours > 0).sort((a, b) => a.airTempC - b.airTempC);
  return {
    formula: `R = ${rows.map(({ airTempC }) => `h_${airTempC} * r_${airTempC}`).join(" + ")}`,
    terms: rows.flatMap(({ airTempC, deskHours, reports }): Term[] => {
      const working = rateWorking(fit, side, airTempC + shiftK, reports / deskHours);
      return [
        {
          symbol: `h_${airTempC}`,
          label: `Occupied desk-hours of the year's cooling season with zone air about ${airTempC}\u00a0°C`,
          value: deskHours,
          unit: "h",
          origin: "measured",
          source: "zone air trends and the register of desks",
        },
        {
          symbol: `r_${airTempC}`,
          label: `Reports per desk-hour there${shiftK === 0 ? "" : `, moved to ${airTempC + shiftK}\u00a0°C`}`,
          value: working.result.value,
          unit: "1/h",
          origin: "computed",
          working,
        },
      ];
    }),
    result: {
      symbol: "R",
      label: `reports ${REPORTS[side]} if zones differ by ${fit.zoneDeviation}`,
      value: rows.reduce((sum, { reports }) => sum + reports, 0),
      unit: "a year",
    },
  };
}

/** A rate of one degree: readiness to report · share with the wish · what floors and zones make of it on average. */
function rateWorking({ shared }: WeightedFit, side: Side, airTempC: number, rate: number): Working {
  const readiness = Math.exp(shared[0] as number);
  const [a, b] = [shared[1 + 2 * side] as number, shared[2 + 2 * side] as number];
  const share = logistic(a + b * (airTempC - REFERENCE_TEMP_C));
  return {
    formula: "r = l * s * m",
    terms: [
      {
        symbol: "l",
        label: "Reports per desk-hour of those who want a change",
        value: readiness,
        unit: "1/h",
        origin: "computed",
        source: FIT_SOURCE,
      },
      {
        symbol: "s",
        label: `Share who want it ${WISHES[side]} at ${airTempC}\u00a0°C`,
        value: share,
        unit: "",
        origin: "computed",
        working: {
          formula: `s = ${LOGIT}`,
          terms: logitTerms({ a, b }, side, airTempC, FIT_SOURCE),
          result: { symbol: "s", label: `share who want it ${WISHES[side]}`, value: share, unit: "" },
        },
      },
      {
        symbol: "m",
        label: "How floors and zones differ, on average over these desk-hours",
        value: rate / (readiness * share),
        unit: "",
        origin: "computed",
        source: FIT_SOURCE,
      },
    ],
    result: { symbol: "r", label: `reports ${REPORTS[side]} per desk-hour`, value: rate, unit: "1/h" },
  };
}

const LOGIT = "1 / (1 + exp(-(a + b * (t - 23))))";

const logitTerms = ({ a, b }: { a: number; b: number }, side: Side, airTempC: number, source: string): Term[] => [
  {
    symbol: "a",
    label: `Logit of the share at ${REFERENCE_TEMP_C}\u00a0°C`,
    value: a,
    unit: "",
    origin: "computed",
    source,
  },
  {
    symbol: "b",
    label: `Change of the logit with temperature, ${WISHES[side]}`,
    value: b,
    unit: "1/K",
    origin: "computed",
    source,
  },
  { symbol: "t", label: "Zone air", value: airTempC, unit: "°C", origin: "measured", source: "zone air trends" },
];

/** Working of the share of people who want it warmer (side 0) or cooler (1) at an air temperature; `wantedShares`' median. */
export function shareWorking(
  { fits, prior }: ReportModel,
  { side, airTempC, share }: { side: Side; airTempC: number; share: Share },
): Working {
  const before = side === 0 ? prior.warmer : prior.cooler;
  const mean = (at: number, symbol: "a" | "b", vote: number, deviation: number): Term => {
    const value = fits.reduce((sum, { shared, weight }) => sum + weight * (shared[at] as number), 0);
    const label =
      symbol === "a" ? `Logit of the share at ${REFERENCE_TEMP_C}\u00a0°C` : "Change of the logit with temperature";
    const unit = symbol === "a" ? "" : "1/K";
    return {
      symbol,
      label,
      value,
      unit,
      origin: "computed",
      source: `field votes ${vote.toFixed(3)} with a deviation of ${deviation.toFixed(3)} (${VOTE_PRIOR_SOURCE}); then ${FIT_SOURCE}`,
      working: {
        formula: `${symbol} = ${fits.map((_, k) => `w_${k + 1} * ${symbol}_${k + 1}`).join(" + ")}`,
        terms: fits.flatMap((fit, k): Term[] => [
          weightTerm(fit, k),
          {
            symbol: `${symbol}_${k + 1}`,
            label: `${label}, if zones differ by ${fit.zoneDeviation}`,
            value: fit.shared[at] as number,
            unit,
            origin: "computed",
            source: FIT_SOURCE,
          },
        ]),
        result: { symbol, label, value, unit },
      },
    };
  };
  return {
    formula: `s = 100 * ${LOGIT}`,
    terms: [
      mean(1 + 2 * side, "a", before.a, before.deviationA),
      mean(2 + 2 * side, "b", before.b, before.deviationB),
      {
        symbol: "t",
        label: "Mean zone air of the occupied desk-hours",
        value: airTempC,
        unit: "°C",
        origin: "measured",
        source: "zone air trends and the register of desks",
      },
    ],
    result: { symbol: "s", label: `of people want it ${WISHES[side]}`, value: 100 * share.median, unit: "%" },
    notes: [spanNote({ low: 100 * share.low, high: 100 * share.high }, " %")],
    source: VOTE_PRIOR_SOURCE,
  };
}
