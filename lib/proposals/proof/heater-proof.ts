import type { Proof } from "../verification-result";

/** Space heaters on the register before and after: a count, good as the survey behind it. */
export function heaterProof(before: number, after: number, expectedGiven: number): Proof {
  const verdict = after < before ? "shown" : after > before ? "worse" : expectedGiven < 1 ? "not-shown" : "too-early";
  return {
    id: "heaters",
    label: "Space heaters in the proposal's zones",
    unit: "heaters",
    before,
    after,
    change: after - before,
    low: null,
    high: null,
    confidence: 1,
    verdict,
    sentence: `The register has ${before} at the end of the window before and ${after} at the end of the one after; ${expectedGiven.toFixed(1)} were expected to go. It knows what was looked at: walk the desks again after 4 and 12 weeks.`,
  };
}
