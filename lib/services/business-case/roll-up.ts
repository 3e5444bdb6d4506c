import { listProposalEvents, listProposalIssues, listProposals } from "@/db/queries/proposals";
import { listVerificationResults } from "@/db/queries/verifications";
import { chosenOf } from "@/lib/business-case/from-proposal/case-from-proposal";
import { type RollUp, type RollUpEntry, type RollUpStage, rollUp } from "@/lib/business-case/roll-up";
import type { ProposalStatus } from "@/lib/proposals/proposal-status";
import { requireFacilities } from "../authorise";
import { readBuildings } from "../buildings/find";
import type { Context } from "../context";

/** Stage of a status; drafts, refused and undone proposals save nothing that could be summed. */
const STAGE: Partial<Record<ProposalStatus, RollUpStage>> = {
  submitted: "proposed",
  approved: "approved",
  "in-force": "approved",
  adopted: "approved",
};

/** Savings over all buildings, as they were issued. Verified is what the newest verification of a proposal shows to be there. */
export function readRollUp(ctx: Context): RollUp {
  requireFacilities(ctx);
  const entries = readBuildings(ctx).flatMap((building) =>
    listProposals(ctx.db, building.id).flatMap(({ id, title }): RollUpEntry[] => {
      const status = listProposalEvents(ctx.db, id).at(-1)?.status;
      const stage = status && STAGE[status];
      const copy = stage ? listProposalIssues(ctx.db, id)[0]?.copy : undefined;
      if (!stage || !copy) return [];
      const verified = listVerificationResults(ctx.db, id)[0];
      const chosen = chosenOf(copy);
      return [
        {
          buildingId: building.id,
          buildingName: building.name,
          currency: copy.building.currency,
          proposalId: id,
          title,
          stage: verified?.verdict === "shown" && stage === "approved" ? "verified" : stage,
          verification: verified?.result.sentence ?? "",
          draws: chosen.drawn.draws,
          zoneIds: chosen.levers.map(({ zoneId }) => zoneId),
        },
      ];
    }),
  );
  return rollUp(entries);
}
