import type { Evidence, Finding } from "@/lib/findings/finding";
import type { CircuitVerdict } from "./assess-circuit";
import type { TripBand } from "./trip-band";

export type CircuitFindingCode =
  | "receptacle-over-limit"
  | "twin-socket-over-limit"
  | "lead-over-fuse"
  | "load-from-class-default"
  | "circuit-not-traced"
  | "reading-not-trusted"
  | "shared-neutral-unknown"
  | "leg-unbalanced"
  | "has-tripped";

/** The sentence for a finding about a circuit: what, how much it matters, what to do. */
export function circuitFindingText({ code, evidence }: Finding<CircuitFindingCode>): string {
  const of = (key: string): string => numberText(evidence, key);
  const at = evidence.outlet ? ` ${String(evidence.outlet)}` : "";
  switch (code) {
    case "receptacle-over-limit":
      return `${of("device")} draws ${of("loadA")} A${evidence.byLabel ? " by its label" : ", no label read"}, above the code's planning limit of ${of("limitA")} A for a ${of("receptacleRatingA")} A receptacle.`;
    case "twin-socket-over-limit":
      return `Twin socket${at}: ${of("devices")} draw ${of("loadA")} A together, above the ${of("limitA")} A that both halves are made for. Put one of them elsewhere.`;
    case "lead-over-fuse":
      return `One lead${at} feeds ${of("devices")}: ${of("loadA")} A through a ${of("fuseA")} A fuse, ${of("ratingMultiple")} times its rating. ${FUSE_WORDS[String(evidence.fuseBand)] ?? ""} Unplug one of them now.`;
    case "load-from-class-default":
      return `Nothing was measured and no label read of ${of("devices")}: the high end of its sort stands in. A reading or the label settles it.`;
    case "circuit-not-traced":
      return `That ${of("devices")} hangs on this breaker is assumed, not traced. Trace the outlet before relying on the sum.`;
    case "reading-not-trusted":
      return `The reading of ${of("devices")} is less than half of what its label says and is left aside. Read it again at its highest setting, one conductor in the jaws.`;
    case "shared-neutral-unknown":
      return "Whether the neutral is shared with another circuit is not known. An electrician can tell at the panel.";
    case "leg-unbalanced":
      return `The circuit lies between two legs (${of("leg")}): its load counts on both of them.`;
    case "has-tripped":
      return `It has tripped: ${of("tripNote")}. That is evidence of overload; no trip would prove nothing.`;
  }
}

const FUSE_WORDS: Record<string, string> = {
  "carries-at-least-30-min": "The fuse does not open, but the lead overheats.",
  "may-open": "The fuse may or may not open, and the lead overheats.",
  "opens-within-30-min": "The fuse opens within half an hour, and the lead overheats until then.",
};

const VERDICT_WORDS: Record<CircuitVerdict, string> = {
  "over-rating": "above the breaker's rating",
  "over-continuous-limit": "above the code's planning limit for continuous load",
  "over-single-item-share": "above the code's planning limit for one item",
  "within-limits": "within the code's planning limits",
};

export const verdictLabel = (verdict: CircuitVerdict): string => VERDICT_WORDS[verdict];

const TRIP_WORDS: Record<TripBand, string> = {
  "no-trip-expected": "no trip expected",
  "holds-at-least-1h": "must hold for at least an hour, though over its rating",
  "may-hold": "may hold without end, with conductors overloaded",
  "trips-within-1h": "trips within the hour",
  "trips-within-2min": "trips within two minutes",
};

export const tripBandLabel = (band: TripBand): string => TRIP_WORDS[band];

/** Every verdict ends with it. */
export const DEFERRING = "A licensed electrician must confirm the circuit.";

function numberText(evidence: Evidence, key: string): string {
  const value = evidence[key];
  if (typeof value !== "number") return String(value ?? "");
  return String(value >= 100 ? Math.round(value) : Number(value.toFixed(2)));
}
