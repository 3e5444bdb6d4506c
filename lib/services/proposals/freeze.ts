import { listVariants } from "@/db/queries/proposals";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { drawnTotals } from "@/lib/proposals/live/drawn-totals";
import { livePicture } from "@/lib/proposals/live/live-picture";
import { resolveAssumptions } from "../assumptions/resolve";
import { actorName } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { readCostOfOvercooling } from "../overcooling/assess";
import { findProposalOrRefuse } from "./find";
import { withCircuits, workOutGround } from "./ground";

/** The proposal with its figures as everything stands now, worked out here and never taken from a page. */
export async function freezeProposal(ctx: Context, buildingId: number, id: number): Promise<FrozenProposal> {
  const building = findBuildingOrRefuse(ctx, buildingId);
  const row = findProposalOrRefuse(ctx, buildingId, id);
  const variants = listVariants(ctx.db, id);
  const ground = await workOutGround(ctx, building);
  if (!ground.building)
    throw new ServiceError("precondition", "There is no weather year yet: import one before a proposal is submitted.");
  const inputs = withCircuits(ctx, buildingId, ground.building);
  const chosen = variants.find((each) => each.position === row.chosenPosition);
  if (!chosen || chosen.levers.length === 0)
    throw new ServiceError("precondition", "The proposed variant has no lever in any zone: move one first.");
  const { assessment } = await readCostOfOvercooling(ctx, buildingId);
  return {
    version: 1,
    building: {
      id: building.id,
      name: building.name,
      currency: building.currency,
      timeZone: building.timeZone,
      temperatureUnit: building.temperatureUnit,
      floorAreaM2: building.floorAreaM2,
      heatingFuel: building.heatingFuel,
    },
    proposal: {
      id: row.id,
      title: row.title,
      reason: row.reason,
      seasonFromMonth: row.seasonFromMonth,
      seasonToMonth: row.seasonToMonth,
      fromMinute: row.fromMinute,
      toMinute: row.toMinute,
      investmentMinor: row.investmentMinor,
    },
    plan: row.plan,
    ventilationCheck:
      row.ventilationEngineer === null || row.ventilationCheckedOn === null
        ? null
        : { engineer: row.ventilationEngineer, onDate: row.ventilationCheckedOn, note: row.ventilationNote },
    inputs,
    assumptions: resolveAssumptions(ctx, buildingId),
    cost:
      assessment.status === "ok"
        ? {
            headline: assessment.headline,
            tier: assessment.tier.number,
            tierLabel: assessment.tier.label,
            findings: assessment.findings,
          }
        : null,
    variants: variants.map(({ id: variantId, name, levers }) => ({
      variantId,
      name,
      levers,
      picture: livePicture(inputs, levers, row),
      drawn: drawnTotals(inputs, levers, row),
    })),
    chosenVariantId: chosen.id,
    issuedBy: actorName(ctx.actor),
    issuedAtMs: ctx.now,
  };
}
