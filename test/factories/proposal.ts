import type { ProposalInput } from "@/lib/services/proposals/proposal-input";

/** A proposal as the page posts it: one variant that raises the cooling setpoint of one zone. */
export function proposalInputOf(zoneId: number, changes: Partial<ProposalInput> = {}): ProposalInput {
  return {
    title: "Second floor, one kelvin",
    reason: "Cold reports and heaters in summer.",
    seasonFromMonth: 5,
    seasonToMonth: 9,
    fromMinute: 7 * 60,
    toMinute: 18 * 60,
    investment: 1200,
    plan: {
      stepKPerWeek: 0.5,
      stopRules: { hotReportsPerWeek: 3, dissatisfiedPct: 15, zoneAirTempC: 25.5 },
      switchback: null,
      notice: "From Monday the cooling setpoint of this floor goes up by half a kelvin a week.",
    },
    chosenPosition: 0,
    variants: [{ name: "One kelvin", levers: [{ zoneId, lever: "cooling-setpoint", amount: 1 }] }],
    ...changes,
  };
}
