import { balanceTempC } from "@/lib/energy-model/balance-temperature";
import { outdoorHours } from "@/lib/energy-model/outdoor-hours";
import { degreeHourFractionPerK } from "@/lib/energy-model/percent-per-kelvin";
import type { Finding } from "@/lib/findings/finding";
import type { Range80 } from "@/lib/working/working";
import type { Tier, TierResult } from "./assessment";
import type { AssessmentInput } from "./assessment-input";
import { assumptionInputs } from "./assumption-inputs";

/** National estimate of electricity lost to overcooling in the US stock: Derrible & Reeder 2018, 12.9 kWh/m² a year. */
const MOST_ELECTRIC_KWH_PER_M2 = 13;
/** Overcooling's share of cooling and fan energy above which the figure is doubted (reference J). */
const MOST_HVAC_FRACTION = 0.25;
/** Usual 80 % bands of the methods about their P50 (reference J, judgement). */
const USUAL_BAND: Record<Tier, { low: number; high: number }> = {
  0: { low: 0.4, high: 2 },
  1: { low: 0.5, high: 1.7 },
  2: { low: 0.65, high: 1.35 },
  3: { low: 0.75, high: 1.25 },
  // The proof's own interval stands for the method: nothing is usual.
  4: { low: 1, high: 1 },
};
/** Measured share of the floor area from which a figure of zones can be held against one of the building. Judgement. */
const COMPARABLE_AREA = 0.8;

export type Outcome = {
  tier: Tier;
  headline: Range80;
  electricKwh: Range80;
  /** Stated electricity of setpoint, minimum airflow, reheat and fan. */
  hvacKwh: number;
  /** Of it the setpoint's alone. */
  setpointKwh: number;
  measuredAreaShare: number;
  lowerTiers: readonly TierResult[];
  widestInputs: readonly string[];
};

/** Figures that a reader should doubt, each with the number that tripped (reference J). */
export function sanityGates(input: AssessmentInput, outcome: Outcome): Finding[] {
  const { resolved } = assumptionInputs(input.assumptions);
  const findings: Finding[] = [];
  const caution = (code: string, evidence: Finding["evidence"]): void => {
    findings.push({ code, severity: "caution", evidence });
  };
  const perM2 = outcome.electricKwh.p50 / input.floorAreaM2;
  if (perM2 > MOST_ELECTRIC_KWH_PER_M2) {
    caution("electricity-above-national-estimate", { kwhPerM2: perM2, mostKwhPerM2: MOST_ELECTRIC_KWH_PER_M2 });
  }
  const typicalKwhPerM2 = resolved("cooling-end-use-intensity").value + resolved("ventilation-end-use-intensity").value;
  const fraction = outcome.hvacKwh / (typicalKwhPerM2 * input.floorAreaM2);
  if (fraction > MOST_HVAC_FRACTION) {
    caution("large-share-of-cooling-energy", {
      sharePct: 100 * fraction,
      mostPct: 100 * MOST_HVAC_FRACTION,
      typicalKwhPerM2,
    });
  }
  const percent = resolved(`setpoint-percent-per-kelvin/${input.systemType}`).value;
  const bound = weatherPercentPerK(input);
  if (bound !== null && percent > bound) {
    caution("percent-beyond-weather", { percentPerK: percent, mostPercentPerK: bound });
  }
  const published = percentAgainstPublished(input, outcome, typicalKwhPerM2);
  if (published) findings.push(published);
  const { p10, p50, p90 } = outcome.headline;
  if (p50 < 0) caution("cost-negative", { p50 });
  const band = USUAL_BAND[outcome.tier];
  if (p50 > 0 && p10 / p50 > band.low && p90 / p50 < band.high) {
    findings.push({
      code: "range-narrower-than-usual",
      severity: "note",
      evidence: {
        lowPct: 100 * (p10 / p50),
        highPct: 100 * (p90 / p50),
        usualLowPct: 100 * band.low,
        usualHighPct: 100 * band.high,
      },
    });
  }
  const comparable = outcome.tier < 2 || outcome.measuredAreaShare >= COMPARABLE_AREA;
  for (const each of comparable ? outcome.lowerTiers : []) {
    if (each.p10 > p90 || each.p90 < p10) {
      caution("inconsistent", {
        tier: outcome.tier,
        p10,
        p90,
        otherTier: each.tier,
        otherP10: each.p10,
        otherP90: each.p90,
        widestInputs: outcome.widestInputs,
      });
    }
  }
  return findings;
}

/** Rise of the setpoint below which a percentage a kelvin says nothing [K]. Judgement, no source. */
const LEAST_RISE_K = 0.5;

/**
 * The figure as a percentage a kelvin of an average office's cooling and fan electricity, where it leaves what
 * simulations and trials of the system's kind found (reference C-iii); null inside it.
 */
function percentAgainstPublished(input: AssessmentInput, outcome: Outcome, typicalKwhPerM2: number): Finding | null {
  const riseK = input.targetZoneAirTempC - (input.presentCoolingSetpointC ?? Number.NaN);
  const fraction = outcome.hvacKwh / (typicalKwhPerM2 * input.floorAreaM2);
  if (!(riseK >= LEAST_RISE_K) || !(fraction < 1)) return null;
  const percentPerK = 100 * (1 - (1 - fraction) ** (1 / riseK));
  const { low, high } = assumptionInputs(input.assumptions).resolved(`setpoint-percent-per-kelvin/${input.systemType}`);
  if (percentPerK >= low && percentPerK <= high) return null;
  const setpointPct = outcome.hvacKwh > 0 ? (100 * outcome.setpointKwh) / outcome.hvacKwh : 0;
  return {
    code: percentPerK > high ? "percent-above-published" : "percent-below-published",
    severity: "note",
    evidence: { percentPerK, low, high, riseK, setpointPct, typicalKwhPerM2 },
  };
}

/** Most percent a kelvin that the weather allows by the degree-hour identity (reference Q3). */
function weatherPercentPerK(input: AssessmentInput): number | null {
  if (!input.weather || input.presentCoolingSetpointC === null) return null;
  const { resolved } = assumptionInputs(input.assumptions);
  // Gain and loss both by floor area: their ratio is that of the building's.
  const baseC = balanceTempC({
    setpointC: input.presentCoolingSetpointC,
    internalGainKw: resolved("internal-gain-per-area").value,
    heatLossKwPerK: resolved("building-heat-loss-per-area").value,
  });
  const fraction = degreeHourFractionPerK(outdoorHours(input.weather.dryBulbC, input.weather.occupied), baseC);
  return fraction === null ? null : 100 * fraction;
}
