import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { proofSums } from "@/lib/proposals/proof/proof-sums";
import type { Proof, ProofSum, VerifiedSaving } from "@/lib/proposals/verification-result";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";
import type { Expected } from "./expected";

/** Degrees of freedom of what is as good as normal: the deviation whose normal has the proof's interval is wanted. */
const MANY = 1e6;

type Found = {
  issued: FrozenProposal;
  expected: Expected;
  energy: Proof;
  air: Proof;
  meter: string;
  /** Occupied days of the window after with readings of the meter. */
  days: number;
};

/** Sums of a proof's energy in kWh and money, and what it measured beside the model, for the cost to be verified by. */
export function energyOf({ issued, expected, energy, air, meter, days }: Found): {
  sums?: ProofSum[];
  saving?: VerifiedSaving;
} {
  const { inputs, building, proposal } = issued;
  const sums = proofSums(energy, {
    currency: building.currency,
    price: inputs.shared.electricityPrice.term,
    expected: expectedBasis(proposal.id, expected),
    days,
  });
  const [avoided] = sums;
  if (!avoided || avoided.low === null || avoided.high === null || air.change === null) return { sums };
  return {
    sums,
    saving: {
      measuredKwh: avoided.value / days,
      standardErrorKwh: (avoided.high - avoided.low) / days / 2 / studentTwoSidedQuantile(energy.confidence, MANY),
      days,
      meter,
      modelledAirKwh: expected.air.kwhPerDay,
      parts: expected.air.parts,
      heatersKwh: expected.heaters,
      riseK: air.change,
      expectedRiseK: expected.riseK,
    },
  };
}

/** What was expected of a year, with the page of its working. */
export const expectedBasis = (proposalId: number, { electricKwh, seasonDays, place }: Expected) => ({
  electricKwh,
  seasonDays,
  href: `/proposals/${proposalId}/working/${place}-electricity`,
});
