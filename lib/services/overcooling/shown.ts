import type { Assessed, BuildingAssessment } from "@/lib/overcooling/assessment";
import type { TargetCurve } from "@/lib/overcooling/target-curve";
import { cutWorking, type Working } from "@/lib/working/working";
import type { Input } from "../kept/inputs";
import type { ResultKind } from "../kept/result-kind";
import { type CostOfOvercooling, readCostOfOvercooling } from "./assess";
import { readTargetCurve } from "./target-curve";

/** The cost rests on everything of a building but the files that brought it; of proposals on those that are proved. */
const INPUTS = [
  "trends",
  "mapping",
  "zones",
  "devices",
  "reports",
  "building",
  "assumptions",
  "weather",
  "bills",
  "proposals",
] as const;

/** The cost with one level of every working, as pages write it out; what lies deeper is kept figure by figure. */
export const COST: ResultKind<CostOfOvercooling> = {
  name: "cost",
  version: 3,
  inputs: INPUTS satisfies readonly Input[],
  async workOut(ctx, building) {
    const cost = await readCostOfOvercooling(ctx, building.id);
    return { ...cost, assessment: withoutDepth(cost.assessment) };
  },
};

/** The whole working of one figure, by the name that its page has; null when there is no such figure. */
export const FIGURE_WORKING: ResultKind<{ working: Working | null }> = {
  name: "working",
  version: 3,
  inputs: INPUTS,
  async workOut(ctx, building, figure) {
    const { assessment } = await readCostOfOvercooling(ctx, building.id);
    return { working: assessment.status === "ok" ? workingOf(assessment, figure ?? "total") : null };
  },
};

/** The working that an address names: a component, `zone-<id>`, `electricity`, `heat`, `emissions`, `avoidable`, ... */
function workingOf(assessed: Assessed, figure: string): Working | null {
  const totals = new Map([
    ["total", assessed.working],
    ["electricity", assessed.energy.electricKwh.working],
    ["heat", assessed.energy.heatKwh.working],
    ["emissions", assessed.emissionsKgCo2.working],
    ["avoidable", assessed.avoidable.working],
    ["heaters-outside-season", assessed.heatingSeason?.working ?? null],
  ]);
  const zone = assessed.zones.find((each) => `zone-${each.zoneId ?? "rest"}` === figure);
  const component = assessed.components.find((each) => each.id === figure);
  return totals.get(figure) ?? zone?.working ?? component?.working ?? null;
}

/** The names that `FIGURE_WORKING` knows in an assessment: any other address is none. */
export function isFigure(assessment: BuildingAssessment, figure: string): boolean {
  return assessment.status === "ok" && workingOf(assessment, figure) !== null;
}

/** The cost against other targets, for its page. */
export const TARGET_CURVE: ResultKind<TargetCurve> = {
  name: "target-curve",
  version: 2,
  inputs: INPUTS,
  workOut: (ctx, building) => readTargetCurve(ctx, building.id),
};

function withoutDepth(assessment: BuildingAssessment): BuildingAssessment {
  if (assessment.status !== "ok") return assessment;
  const cut = <T extends { working: Working }>(each: T): T => ({ ...each, working: cutWorking(each.working, 0) });
  return {
    ...assessment,
    working: cut(assessment).working,
    energy: { electricKwh: cut(assessment.energy.electricKwh), heatKwh: cut(assessment.energy.heatKwh) },
    emissionsKgCo2: cut(assessment.emissionsKgCo2),
    avoidable: cut(assessment.avoidable),
    heatingSeason: assessment.heatingSeason && cut(assessment.heatingSeason),
    components: assessment.components.map(cut),
    zones: assessment.zones.map(cut),
  };
}
