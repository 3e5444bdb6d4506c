import type { CircuitAssessment } from "@/lib/electrical/circuit/assess-circuit";
import { circuitFindingText, DEFERRING, tripBandLabel, verdictLabel } from "@/lib/electrical/circuit/circuit-findings";
import type { MappingBasis, OutletKind } from "@/lib/electrical/circuit/circuit-kinds";
import type { LoadBasis } from "@/lib/electrical/circuit/device-load";
import type { CircuitView, FeederLoad } from "@/lib/services/circuits/read";
import { formatNumber } from "@/lib/units/format";

const amperes = (value: number): string => `${formatNumber(value, { decimals: 1 })}\u2009A`;

/** One stretch of a circuit's bar. */
export type LoadPart = { key: string; label: string; currentA: number; continuous: boolean; base: boolean };

/** One scale for the bars of a page. */
export const commonEndA = (pictures: readonly CircuitPicture[]): number =>
  Math.max(1, ...pictures.map(({ endA }) => endA));

export type CircuitPicture = {
  parts: LoadPart[];
  totalA: number;
  ratingA: number | null;
  limitA: number | null;
  endA: number;
};

/** What the bar of a circuit is drawn from: base load first, then the devices, the largest first. */
export function pictureOf(
  { circuit, devices, limitA }: CircuitView,
  leaving: ReadonlySet<number> = new Set(),
): CircuitPicture {
  const parts: LoadPart[] = [];
  const base = (key: string, label: string, currentA: number | null, continuous: boolean) => {
    if (currentA) parts.push({ key, label, currentA, continuous, base: true });
  };
  base("base-continuous", "base load, continuous", circuit.baseContinuousA, true);
  base("base-rest", "base load, not continuous", circuit.baseNonContinuousA, false);
  const known = devices.flatMap(({ device, load, countsAsContinuous }) =>
    load.status === "unknown" || leaving.has(device.id)
      ? []
      : {
          key: String(device.id),
          label: device.label,
          currentA: load.currentA,
          continuous: countsAsContinuous,
          base: false,
        },
  );
  parts.push(...known.sort((a, b) => b.currentA - a.currentA));
  const totalA = parts.reduce((sum, { currentA }) => sum + currentA, 0);
  const ratingA = circuit.breakerRatingA;
  return {
    parts,
    totalA,
    ratingA,
    limitA,
    endA: 1.08 * Math.max(totalA, ratingA ?? 0, 1),
  };
}

/** The verdict as it is printed; it always ends with who has to confirm it. */
export function verdictSentence(assessment: CircuitAssessment, breakerRatingA: number | null): string {
  if (assessment.status === "not-established") {
    const missing = assessment.missing.join(" and ");
    return `Not established: the ${missing} ${assessment.missing.length === 1 ? "is" : "are"} not known. The devices alone draw ${amperes(assessment.deviceOnlyA)}. ${DEFERRING}`;
  }
  const { verdict, worstCaseA, headroomContinuousA, tripBand, ratingMultiple } = assessment;
  const worst = `${amperes(worstCaseA)} with everything at its highest`;
  const rating =
    breakerRatingA === null ? "" : `, ${formatNumber(ratingMultiple, { decimals: 2 })} of ${amperes(breakerRatingA)}`;
  const room =
    headroomContinuousA >= 0
      ? `${amperes(headroomContinuousA)} of continuous load left`
      : `${amperes(-headroomContinuousA)} over the continuous limit`;
  const half =
    assessment.missing.length > 0
      ? ` The ${assessment.missing.join(" and ")} is not known and can only add to it.`
      : "";
  return `${capital(verdictLabel(verdict))}: ${worst}${rating}; ${room}. Breaker: ${tripBandLabel(tripBand)}.${half} ${DEFERRING}`;
}

export const verdictTag = (assessment: CircuitAssessment): { word: string; kind: "plain" | "strong" | "danger" } => {
  if (assessment.status === "not-established") return { word: "not established", kind: "plain" };
  if (assessment.verdict === "over-rating") return { word: "above rating", kind: "danger" };
  return assessment.verdict === "within-limits"
    ? { word: "within limits", kind: "plain" }
    : { word: "above planning limit", kind: "strong" };
};

export const findingsOf = (assessment: CircuitAssessment) =>
  assessment.findings.map((finding, index) => ({
    key: `${finding.code}-${index}`,
    severity: finding.severity,
    sentence: circuitFindingText(finding),
  }));

/** What would bring the circuit back: one sentence a choice. */
export function reliefSentences({ relief, input }: CircuitView): string[] {
  return relief.map(({ leaving, leavingA, after }) => {
    const names = leaving.map((index) => input.devices[index]?.name ?? "").join(" and ");
    const rest =
      after.status === "ok"
        ? `leaves ${amperes(after.worstCaseA)}, within the limits`
        : "leaves nothing above a limit that is known";
    return `Moving or retiring ${names} (${amperes(leavingA)}) ${rest}.`;
  });
}

const LOADS: Record<LoadBasis, string> = {
  measured: "measured",
  nameplate: "nameplate",
  "class-default": "high end of its sort",
};
export const loadBasisLabel = (basis: LoadBasis): string => LOADS[basis];

const MAPPINGS: Record<MappingBasis, string> = {
  "circuit-tracer": "circuit tracer",
  "breaker-switched": "breaker switched off and seen",
  "panel-schedule": "panel schedule",
  "outlet-label": "number on the outlet",
  assumed: "assumed",
};
export const mappingLabel = (mapping: MappingBasis): string => MAPPINGS[mapping];

const OUTLETS: Record<OutletKind, string> = {
  single: "wall outlet, single",
  duplex: "wall outlet, duplex",
  "twin-socket": "twin socket",
  "floor-box": "floor box",
  "furniture-outlet": "outlet of the furniture",
  "power-strip": "power strip",
  "extension-lead": "extension lead",
  unknown: "not said",
};
export const outletLabel = (outlet: OutletKind): string => OUTLETS[outlet];

export const feederSentence = ({ panel, diversifiedA, diversityFactor }: FeederLoad): string =>
  `Feeder of panel ${panel}: ${amperes(diversifiedA)} of heaters and fans after the office allowance, all of the largest and 75 % of the rest (${formatNumber(100 * diversityFactor, { decimals: 0 })} % of their sum). For demand only: no circuit is judged by it.`;

/** The page's one sentence. */
export function circuitsLede(views: readonly CircuitView[]): string {
  if (views.length === 0) return "Branch circuits with what hangs on them, held against the rules of the place.";
  const count = (test: (view: CircuitView) => boolean): number => views.filter(test).length;
  const over = count(({ assessment }) => assessment.status === "ok" && assessment.verdict === "over-rating");
  const planning = count(
    ({ assessment }) =>
      assessment.status === "ok" && assessment.verdict !== "over-rating" && assessment.verdict !== "within-limits",
  );
  const open = count(({ assessment }) => assessment.status === "not-established");
  return `Of ${views.length} ${views.length === 1 ? "circuit" : "circuits"} ${over} above the breaker's rating, ${planning} above the code's planning limit, ${open} not established.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
