import type { Finding } from "@/lib/findings/finding";
import { type Assessed, type BuildingAssessment, TIER_LABELS, type TierResult } from "./assessment";
import type { AssessmentInput } from "./assessment-input";
import { avoidableCost } from "./avoidable";
import { spreadOf } from "./calculation/contributions";
import type { Quantity, Step, Sum } from "./calculation/quantity";
import { runStudy } from "./calculation/study";
import type { TierModel } from "./component-model";
import { dataFindings } from "./data-findings";
import { heatingSeasonCost } from "./heating-season";
import { inputFaults } from "./input-gates";
import { type Plant, type PlantWeather, plantOf } from "./plant";
import { assessmentResult, drawsNeeded, rowTotals } from "./result";
import { assessmentRows, type Row } from "./rows";
import { sanityGates } from "./sanity-gates";
import { asOneRow, type RowsAndHeaters } from "./tiers/as-one-row";
import { estimateTier } from "./tiers/estimate-tier";
import { heaterEnergyCell } from "./tiers/heater-cells";
import { measuredTier } from "./tiers/measured-tier";
import { meteredTier } from "./tiers/metered-tier";
import { screeningTier } from "./tiers/screening-tier";
import { verifiedTier } from "./tiers/verified-tier";
import { type Totals, totalsOf } from "./totals";
import { withMeanTarget } from "./zone-target";

/**
 * What overcooling costs a building in a year (reference I and J): the highest tier that the data allow, as P10, P50 and
 * P90 over seeded draws, split over components and zones so that the parts add up to the P50, with the working of every
 * component. It is the waste as it stands; what a change would save of it comes with proposals. Money in major units.
 */
export function assessBuilding(input: AssessmentInput): BuildingAssessment {
  if (!(input.draws >= 100)) throw new RangeError("an assessment needs at least 100 draws");
  const faults = inputFaults(input);
  if (faults.length > 0) return { status: "blocked", findings: faults };

  const { rows, findings, models, headline, byRow, totals, avoidable, heatingSeason, kept } = modelBuilding(input);
  if (isNothingKnown(headline, input)) return { status: "blocked", findings: [NOTHING_KNOWN] };
  const study = runStudy(kept, input);

  const lowerTiers = models
    .slice(1)
    .map(
      (each): TierResult => ({ tier: each.tier, label: TIER_LABELS[each.tier], ...spreadOf(study.draws(each.total)) }),
    );
  const result: Assessed = {
    ...assessmentResult({ input, model: headline, byRow, totals, avoidable, heatingSeason, study }),
    findings: [...findings, ...dataFindings(input, rows, headline.tier)],
    lowerTiers,
  };
  result.findings.push(
    ...sanityGates(input, {
      tier: headline.tier,
      headline: result.headline,
      electricKwh: result.energy.electricKwh,
      hvacKwh: result.components
        .filter((each) => ["setpoint-screening", "setpoint", "deadband", "reheat", "fan"].includes(each.id))
        .reduce((sum, each) => sum + (each.electricKwh ?? 0), 0),
      setpointKwh: result.components
        .filter((each) => ["setpoint-screening", "setpoint"].includes(each.id))
        .reduce((sum, each) => sum + (each.electricKwh ?? 0), 0),
      measuredAreaShare: rows.reduce((sum, each) => sum + (each.record ? each.areaShare : 0), 0),
      lowerTiers,
      widestInputs: result.tornado.slice(0, 3).map((each) => each.label),
    }),
  );
  return result;
}

export const NOTHING_KNOWN: Finding = { code: "nothing-known", severity: "disqualifies", evidence: {} };

/** A nought would say that overcooling costs nothing, when nothing is known of it. */
export const isNothingKnown = (headline: TierModel, { presentCoolingSetpointC }: AssessmentInput): boolean =>
  headline.components.length === 0 && headline.tier === 0 && presentCoolingSetpointC === null;

/** A building's cost as quantities, before any is evaluated. `kept` are those whose draws are needed. */
export function modelBuilding(input: AssessmentInput): BuildingModel {
  const { rows, findings } = assessmentRows(input);
  const plant = plantOf(input);
  const models = tierModels(input, plant, rows);
  const headline = models[0] as TierModel;
  const totals = totalsOf(headline, plant, input.heatingFuel);
  const byRow = rowTotals(headline, rows);
  const avoidable = avoidableCost(headline, plant);
  const heatingSeason = heatingSeasonCost(headline, plant, input.currency);
  // Zone by zone first: what a zone's quantities share is then worked on while it is at hand.
  const kept = [
    ...byRow.values(),
    ...drawsNeeded(headline),
    ...models.map((each) => each.total),
    ...Object.values(totals),
    avoidable,
    ...(heatingSeason ? [heatingSeason] : []),
  ];
  return { rows, findings, models, headline, totals, byRow, avoidable, heatingSeason, kept };
}

export type BuildingModel = {
  rows: Row[];
  findings: Finding[];
  models: TierModel[];
  headline: TierModel;
  totals: Totals;
  byRow: Map<Row, Sum>;
  avoidable: Sum;
  heatingSeason: Step | null;
  kept: Quantity[];
};

/** Tiers that the data allow, highest first. The screening without a setpoint stands only where nothing better does. */
function tierModels(input: AssessmentInput, plant: Plant, rows: readonly Row[]): TierModel[] {
  const tiers: TierModel[] = [];
  const byRow = { rows, heaters: rows.flatMap((row) => heaterEnergyCell(row, plant, input.currency) ?? []) };
  const standing = (): RowsAndHeaters => (tiers[0] ? asOneRow(rows, tiers[0]) : byRow);
  const asOne = withMeanTarget(plant, rows);
  const weather = plant.weather;
  if (weather) {
    const known: Plant & { weather: PlantWeather } = { ...plant, weather };
    if (rows.some((each) => each.record)) tiers.push(measuredTier(input, known, rows, byRow.heaters));
    if (input.presentCoolingSetpointC !== null) {
      const { rows: those, heaters } = standing();
      tiers.push(estimateTier(input, { ...asOne, weather }, those, heaters, input.presentCoolingSetpointC));
    }
  }
  if (tiers.length === 0 || input.presentCoolingSetpointC !== null) {
    const { rows: those, heaters } = standing();
    tiers.push(screeningTier(input, asOne, those, heaters));
  }
  const best = tiers[0] as TierModel;
  const metered = input.meter?.status === "ok" ? meteredTier(input, plant, best, input.meter) : null;
  if (metered) tiers.unshift(metered);
  const verified = best.tier === 2 ? verifiedTier(input, plant, best) : null;
  if (verified) tiers.unshift(verified);
  return tiers;
}
