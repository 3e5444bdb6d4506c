import type { Assumption, AssumptionSource } from "./assumption";

/** Date on which the defaults were last read against their sources. */
const REVIEWED_ON = "2026-11-25";

/** An assumption with what all of them share filled in. */
export const entry = (each: Omit<Assumption, "distribution" | "reviewedOn">): Assumption => ({
  ...each,
  distribution: "triangular",
  reviewedOn: REVIEWED_ON,
});

/** A value that rests on engineering judgement; `why` says on what. */
export const judgement = (why: string): AssumptionSource => ({
  title: `Engineering judgement: ${why}`,
  confidence: "judgement",
});

export const COMSTOCK: AssumptionSource = {
  title: "ComStock reference documentation, HVAC chapter and efficiency tables",
  edition: "commit 75128d3d",
  place: "tables of unitary cooling, air-cooled chillers, heat pumps, boilers and fan power (after ASHRAE 90.1)",
  url: "https://github.com/NREL/ComStock",
  confidence: "published",
};
