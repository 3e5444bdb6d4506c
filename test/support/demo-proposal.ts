import { findBuilding } from "@/db/queries/buildings";
import type { Lever } from "@/lib/proposals/lever";
import type { Context } from "@/lib/services/context";
import { decideProposal } from "@/lib/services/proposals/decide";
import { workOutGround } from "@/lib/services/proposals/ground";
import type { ProposalInput } from "@/lib/services/proposals/proposal-input";
import { draftProposal } from "@/lib/services/proposals/save";

/** What is proposed for a zone of a verdict, whole and by half. */
const LEVERS: Record<string, { lever: Lever; whole: number; half: number }> = {
  "setpoint-first": { lever: "cooling-setpoint", whole: 1, half: 0.5 },
  "minimum-airflow-first": { lever: "minimum-airflow", whole: 40, half: 20 },
};

/** Puts a submitted proposal with two variants on a building that has trends, and returns its id. */
export async function submitDemoProposal(ctx: Context, buildingId: number): Promise<number> {
  const building = findBuilding(ctx.db, buildingId);
  if (!building) throw new Error(`there is no building ${buildingId}`);
  const { verdicts } = await workOutGround(ctx, building);
  const variant = (name: string, amount: "whole" | "half"): ProposalInput["variants"][number] => ({
    name,
    levers: verdicts.flatMap(({ zoneId, verdict }) => {
      const found = LEVERS[verdict];
      return found ? [{ zoneId, lever: found.lever, amount: found[amount] }] : [];
    }),
  });
  const id = draftProposal(ctx, buildingId, {
    title: "Warmer setpoints and lower minimum airflows",
    reason: "People heat against cold air in zones whose setpoint is low or whose minimum airflow is high.",
    seasonFromMonth: 5,
    seasonToMonth: 9,
    fromMinute: 7 * 60,
    toMinute: 18 * 60,
    investment: 900,
    plan: {
      stepKPerWeek: 0.5,
      stopRules: { hotReportsPerWeek: 3, dissatisfiedPct: 15, zoneAirTempC: 25.5 },
      switchback: null,
      notice: "From Monday the cooling setpoint goes up by half a kelvin a week. Tell us how it is at your desk.",
    },
    chosenPosition: 0,
    variants: [variant("Whole step", "whole"), variant("Half a step", "half")],
  });
  await decideProposal(ctx, buildingId, id, { status: "submitted", comment: "For the finance department." });
  return id;
}
