import {
  type ChangePointModel,
  PARAMETER_NAMES,
  PARAMETERS,
  type ParameterName,
} from "@/lib/energy-model/change-point/change-point-model";
import { SAVINGS_FACTOR } from "@/lib/energy-model/verification/savings-uncertainty";
import type { Term, Working } from "@/lib/working/working";

/** The meter that a proof reads, and where its page is. */
export type ProofMeter = { name: string; href: string };

/** What a baseline of days before is worth: its model with what its uncertainty is made of. */
export type BaselineFacts = {
  model: ChangePointModel;
  cvRmse: number;
  n: number;
  effectiveN: number;
  lagOne: number;
  /** Student's factor of the level at n - p degrees of freedom. */
  t: number;
};

type Avoided = {
  baseline: BaselineFacts;
  adjustedKwh: number;
  measuredKwh: number;
  daysAfter: number;
  /** Of the days after [°C]. */
  meanOutdoorC: number;
  halfKwh: number;
  confidence: number;
  meter: ProofMeter;
};

/** Avoided electricity of an occupied day: the model of the days before at the weather after, less what the meter read. */
export function avoidedWorking(of: Avoided): Working {
  const { adjustedKwh, measuredKwh, daysAfter, halfKwh, confidence, meter } = of;
  const avoided = adjustedKwh - measuredKwh;
  const [low, high] = [avoided - halfKwh, avoided + halfKwh].map((each) => each.toPrecision(4));
  return {
    formula: "V = E_m - E_a",
    terms: [
      {
        symbol: "E_m",
        label: "electricity of an occupied day after, by the model of the days before",
        value: adjustedKwh,
        unit: "kWh",
        low: adjustedKwh - halfKwh,
        high: adjustedKwh + halfKwh,
        origin: "computed",
        working: modelWorking(of),
      },
      {
        symbol: "E_a",
        label: "electricity of an occupied day after, as metered",
        value: measuredKwh,
        unit: "kWh",
        origin: "measured",
        source: `mean of ${daysAfter} occupied days of ${meter.name}`,
        href: meter.href,
      },
    ],
    result: { symbol: "V", label: "electricity avoided on an occupied day", value: avoided, unit: "kWh" },
    notes: [`${Math.round(100 * confidence)} % interval: V - U to V + U, ${low} to ${high} kWh.`],
    source: "avoided energy by a whole-building regression (IPMVP option C, from memory; ASHRAE Guideline 14)",
  };
}

/** Half-width of that interval, with one correction for autocorrelation. */
export function halfWidthWorking({ baseline, adjustedKwh, daysAfter, halfKwh, confidence }: Avoided): Working {
  return {
    formula: "U = k * t * c_v * E_m * (n / n_e * (1 + 2 / n_e) / m)^0.5",
    terms: [
      ...errorTerms(baseline, daysAfter, confidence),
      plain("E_m", "electricity of an occupied day after, by the model", adjustedKwh, "kWh"),
    ],
    result: { symbol: "U", label: "half of the interval's width", value: halfKwh, unit: "kWh" },
  };
}

/** Least saved share that so many days after can show: the one whose half-width is half of it. */
export function leastShareWorking(
  baseline: BaselineFacts,
  daysAfter: number,
  confidence: number,
  leastFraction: number,
): Working {
  return {
    formula: "F = 2 * k * t * c_v * (n / n_e * (1 + 2 / n_e) / m)^0.5",
    terms: errorTerms(baseline, daysAfter, confidence),
    result: { symbol: "F", label: "least saved share that can be shown", value: leastFraction, unit: "" },
    source: "uncertainty at most half of the saving (ASHRAE Guideline 14)",
  };
}

function errorTerms({ model, cvRmse, n, effectiveN, lagOne, t }: BaselineFacts, daysAfter: number, confidence: number) {
  const p = PARAMETERS[model.kind];
  const of = `${model.kind} model of ${n} occupied days`;
  return [
    plain("k", "factor of the method", SAVINGS_FACTOR, "", "default", "Reddy & Claridge 2000; Guideline 14-2002"),
    plain("t", `Student's factor, ${Math.round(100 * confidence)} % both sides, ${n - p} degrees of freedom`, t, ""),
    plain("c_v", "CV(RMSE) of the model, a share of its mean", cvRmse, "", "measured", of),
    plain("n", "occupied days before", n, "days", "measured"),
    {
      ...plain("n_e", "independent days among them", effectiveN, "days"),
      working: {
        formula: lagOne > 0 ? "n_e = n * (1 - r) / (1 + r)" : "n_e = n",
        terms: [
          plain("n", "occupied days before", n, "days", "measured"),
          plain("r", "correlation of a day's residual with the next", lagOne, "", "measured", of),
        ],
        result: { symbol: "n_e", label: "independent days", value: effectiveN, unit: "days" },
        source: "Reddy & Claridge 2000; Guideline 14-2002",
      },
    },
    plain("m", "occupied days after", daysAfter, "days", "measured"),
  ];
}

const plain = (
  symbol: string,
  label: string,
  value: number,
  unit: string,
  origin: Term["origin"] = "computed",
  source?: string,
): Term => ({ symbol, label, value, unit, origin, ...(source ? { source } : {}) });

const TERMS: Record<ParameterName, { symbol: string; label: string; unit: string }> = {
  base: { symbol: "b", label: "energy at the change point", unit: "kWh" },
  slope: { symbol: "s", label: "slope", unit: "kWh/K" },
  heatingSlope: { symbol: "s_h", label: "slope below the heating change point", unit: "kWh/K" },
  heatingChangeC: { symbol: "T_h", label: "heating change point", unit: "°C" },
  coolingSlope: { symbol: "s_c", label: "slope above the cooling change point", unit: "kWh/K" },
  coolingChangeC: { symbol: "T_c", label: "cooling change point", unit: "°C" },
  leftSlope: { symbol: "s_l", label: "slope below the change point", unit: "kWh/K" },
  rightSlope: { symbol: "s_r", label: "slope above the change point", unit: "kWh/K" },
  changeC: { symbol: "T_p", label: "change point", unit: "°C" },
};

const FORMULAS: Record<ChangePointModel["kind"], string> = {
  "2P": "E_m = b + s * T_o",
  "3PC": "E_m = mean of b + s_c * max(0, T_o - T_c) over the days after",
  "3PH": "E_m = mean of b + s_h * max(0, T_h - T_o) over the days after",
  "4P": "E_m = mean of b + s_l * min(0, T_o - T_p) + s_r * max(0, T_o - T_p) over the days after",
  "5P": "E_m = mean of b + s_h * max(0, T_h - T_o) + s_c * max(0, T_o - T_c) over the days after",
};

function modelWorking({ baseline, adjustedKwh, daysAfter, meanOutdoorC, meter }: Avoided): Working {
  const { model, n } = baseline;
  const values = model as unknown as Record<ParameterName, number>;
  const source = `${model.kind} change-point model of ${n} occupied days of ${meter.name}`;
  const parameters = PARAMETER_NAMES[model.kind].map((name): Term => {
    const label = name === "base" && model.kind === "2P" ? "energy at 0 °C" : TERMS[name].label;
    return { ...TERMS[name], label, value: values[name], origin: "measured", source, href: meter.href };
  });
  return {
    formula: FORMULAS[model.kind],
    terms: [
      ...parameters,
      plain("T_o", `outdoor air of the ${daysAfter} days after, their mean`, meanOutdoorC, "°C", "measured"),
    ],
    result: {
      symbol: "E_m",
      label: "electricity of an occupied day after, by the model",
      value: adjustedKwh,
      unit: "kWh",
    },
    source: "change-point models of ASHRAE RP-1050",
  };
}
