import type { Range80, Working } from "@/lib/working/working";
import type { Tier } from "./assessment";
import type { AssessmentInput } from "./assessment-input";
import { FIELD_VOTES_SOURCE, type WantedChange, wantedChange } from "./field-votes";
import { headlineOnly } from "./headline-only";

/** Zones from which the curve is drawn from fewer draws: its points share them, so the shape does not suffer. */
const MANY_ZONES = 300;
const FEWER_DRAWS = 1000;

export type TargetPoint = Range80 & {
  targetC: number;
  tier: Tier;
  stated: number;
  /** Of the stated total: its components. */
  working: Working;
  /** Field votes at this air temperature. */
  votes: WantedChange;
};

/** What the cost would be against other targets. The same draws stand behind every point. */
export type TargetCurve = { points: TargetPoint[]; draws: number; votesSource: string };

/** `inputs` are the building at each target, with the records of its zones worked out against it. */
export function targetCurve(inputs: readonly AssessmentInput[]): TargetCurve {
  const draws = (inputs[0]?.zones.length ?? 0) > MANY_ZONES ? FEWER_DRAWS : (inputs[0]?.draws ?? FEWER_DRAWS);
  const points = inputs.flatMap((input): TargetPoint[] => {
    const found = headlineOnly({ ...input, draws });
    if (found.status !== "ok") return [];
    const { tier, range, stated, working } = found;
    const targetC = input.targetZoneAirTempC;
    return [{ targetC, tier, ...range, stated, working, votes: wantedChange(targetC) }];
  });
  return { points, draws, votesSource: FIELD_VOTES_SOURCE };
}
