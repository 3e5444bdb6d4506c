import type { BuildingRow } from "@/db/queries/buildings";
import { listProposalEvents, listProposals } from "@/db/queries/proposals";
import { listVerificationResults } from "@/db/queries/verifications";
import type { ProvenSaving } from "@/lib/overcooling/assessment-input";
import type { ProposalStatus } from "@/lib/proposals/proposal-status";
import { localDateAt } from "@/lib/time/local-date";
import type { Context } from "../context";

/** Statuses in which a change is made and stands. */
const STANDS: readonly ProposalStatus[] = ["in-force", "held", "adopted"];

/**
 * Proofs that the cost of overcooling is verified by: the newest verification of a change that stands, where it is shown as a
 * whole and in energy. One that is rolled back, or not shown when it is looked at again, verifies nothing any more.
 */
export function provenSavings(ctx: Context, { id, timeZone }: Pick<BuildingRow, "id" | "timeZone">): ProvenSaving[] {
  return listProposals(ctx.db, id).flatMap((proposal): ProvenSaving[] => {
    const status = listProposalEvents(ctx.db, proposal.id).at(-1)?.status;
    const [newest] = listVerificationResults(ctx.db, proposal.id);
    if (!status || !STANDS.includes(status) || !newest || newest.verdict !== "shown") return [];
    const { proofs, saving, by } = newest.result;
    const isEnergyShown = proofs.some((each) => each.id === "energy" && each.verdict === "shown");
    if (!isEnergyShown || !saving || !(saving.modelledAirKwh > 0) || !(saving.expectedRiseK > 0)) return [];
    const foundOn = localDateAt(newest.enteredAtMs, timeZone);
    const window = by && by.method === "before-after" ? by.after : null;
    return [{ ...saving, proposalId: proposal.id, title: proposal.title, foundOn, window }];
  });
}
