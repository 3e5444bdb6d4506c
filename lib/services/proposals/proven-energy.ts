import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { proofSums } from "@/lib/proposals/proof/proof-sums";
import type { Proof, ProofSum, VerifiedSaving } from "@/lib/proposals/verification-result";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";
import type { Working } from "@/lib/working/working";
import type { Expected } from "./expected";

/** Degrees of freedom of what is as good as normal: the deviation whose normal has the proof's interval is wanted. */
const MANY = 1e6;

type Found = {
  issued: FrozenProposal;
  expected: Expected;
  energy: Proof;
  /** Whether it tells what was avoided, not proposed less present. */
  isAvoided: boolean;
  air: Proof;
  meter: string;
  /** Occupied days of the window after with readings of the meter. */
  days: number;
};

/** Sums of a proof's energy in kWh and money, and what it measured beside the model, for the cost to be verified by. */
export function energyOf({ issued, expected, energy, isAvoided, air, meter, days }: Found): {
  sums?: ProofSum[];
  saving?: VerifiedSaving;
} {
  const { inputs, building, proposal } = issued;
  const sums = proofSums(energy, {
    isAvoided,
    currency: building.currency,
    price: inputs.shared.electricityPrice.term,
    expected: expectedDay(proposal.id, expected),
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

/** Electricity that an occupied day of the season was expected to save, as issued; its parts open on the issue's own page. */
export function expectedDay(proposalId: number, { kwhPerDayRange, electricKwh, seasonDays, place }: Expected): Working {
  const page = `/proposals/${proposalId}/working/${place}`;
  if (kwhPerDayRange) {
    const { formula, terms, result, notes = [] } = kwhPerDayRange.working;
    const bare = terms.map(({ working, ...term }) =>
      working ? { ...term, source: "the issued proposal", href: `${page}-day` } : term,
    );
    return { formula, terms: bare, result, notes };
  }
  const issued = { origin: "computed" as const, source: "the issued proposal" };
  return {
    formula: "X = E / D",
    terms: [
      {
        symbol: "E",
        label: "electricity saved in the first year, as issued",
        value: electricKwh,
        unit: "kWh a year",
        ...issued,
        href: `${page}-electricity`,
      },
      {
        symbol: "D",
        label: "occupied days of a year that fall into the proposal's season",
        value: seasonDays,
        unit: "days",
        ...issued,
      },
    ],
    result: { symbol: "X", label: "expected of an occupied day", value: electricKwh / seasonDays, unit: "kWh" },
  };
}
