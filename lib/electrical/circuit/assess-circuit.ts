import type { Finding } from "@/lib/findings/finding";
import type { CircuitFindingCode } from "./circuit-findings";
import type { MappingBasis, OutletKind, RuleSetId } from "./circuit-kinds";
import { continuousLimitA } from "./continuous-limit";
import type { LoadBasis } from "./device-load";
import { outletFindings } from "./outlet-findings";
import { RULE_SETS } from "./rule-sets";
import { type TripBand, tripBand } from "./trip-band";

/** Worst first. */
export const CIRCUIT_VERDICTS = [
  "over-rating",
  "over-continuous-limit",
  "over-single-item-share",
  "within-limits",
] as const;
export type CircuitVerdict = (typeof CIRCUIT_VERDICTS)[number];

/** A device, or several alike, by the current of each of its states. */
export type CircuitDevice = {
  name: string;
  nameplateA?: number | null;
  states: Record<string, number>;
  basis?: LoadBasis;
  /** Unknown counts as continuous. */
  continuous?: boolean | null;
  fastened?: boolean;
  quantity?: number;
  /** State seen at the walk-through. The verdict does not rest on it. */
  observedState?: string;
  mapping?: MappingBasis;
  outlet?: { kind: OutletKind; label: string };
  readingNotTrusted?: boolean;
};

export type CircuitInput = {
  code: RuleSetId;
  breakerRatingA: number | null;
  voltageV: number | null;
  /** Of the rules, unless said: 1 for an assembly listed for its whole rating. */
  continuousFactor?: number;
  multiOutlet?: boolean;
  receptacleRatingA?: number | null;
  baseContinuousA: number | null;
  baseNonContinuousA?: number | null;
  devices: readonly CircuitDevice[];
  /** Names of devices on it of which nothing is known. */
  unknownLoads?: readonly string[];
  /** As the panel names it; two of them for a load between legs. */
  leg?: string;
  sharedNeutral?: boolean | null;
  tripNote?: string;
};

export type CircuitFinding = Finding<CircuitFindingCode>;

export type CircuitFigures = {
  /** Everything at its highest, no diversity [A]. */
  worstCaseA: number;
  continuousA: number;
  nonContinuousA: number;
  requiredRatingA: number;
  continuousLimitA: number;
  /** Continuous current that may still be added; below zero when there is too much. */
  headroomContinuousA: number;
  ratingMultiple: number;
  verdict: CircuitVerdict;
  tripBand: TripBand;
  exceedsSingleItemShare: boolean;
  exceedsFastenedShare: boolean;
};

type Common = { deviceOnlyA: number; observedA: number | null; missing: string[]; findings: CircuitFinding[] };

export type CircuitAssessment = Common & (({ status: "ok" } & CircuitFigures) | { status: "not-established" });

/**
 * Judges a branch circuit with every device at its highest state and no diversity: heaters of one overcooled zone answer the same
 * cause at the same hour. C = continuous, N = the rest, both with the base load; required = factor·C + N. Without the rating,
 * the voltage or the base load nothing is called within limits, but what the devices alone exceed stands.
 */
export function assessCircuit(input: CircuitInput): CircuitAssessment {
  const missing = missingOf(input);
  const common = {
    deviceOnlyA: sum(input.devices, highestA),
    observedA: input.devices.some(({ observedState }) => observedState !== undefined)
      ? sum(input.devices, observedA)
      : null,
    missing,
    findings: [...circuitFindings(input), ...outletFindings(input)],
  };
  if (input.breakerRatingA === null) return { ...common, status: "not-established" };
  const figures = figuresOf(input, input.breakerRatingA);
  return missing.length > 0 && figures.verdict === "within-limits"
    ? { ...common, status: "not-established" }
    : { ...common, status: "ok", ...figures };
}

function figuresOf(input: CircuitInput, ratingA: number): CircuitFigures {
  const rules = RULE_SETS[input.code];
  const factor = input.continuousFactor ?? rules.continuousFactor.value;
  const isContinuous = (device: CircuitDevice): boolean => device.continuous !== false;
  const continuousA = (input.baseContinuousA ?? 0) + sum(input.devices.filter(isContinuous), highestA);
  const nonContinuousA =
    (input.baseNonContinuousA ?? 0) +
    sum(
      input.devices.filter((device) => !isContinuous(device)),
      highestA,
    );
  const worstCaseA = continuousA + nonContinuousA;
  const requiredRatingA = factor * continuousA + nonContinuousA;
  const shares = sharesOf(input, ratingA);
  const verdict: CircuitVerdict = exceeds(worstCaseA, ratingA)
    ? "over-rating"
    : exceeds(requiredRatingA, ratingA)
      ? "over-continuous-limit"
      : shares.exceedsSingleItemShare || shares.exceedsFastenedShare
        ? "over-single-item-share"
        : "within-limits";
  return {
    worstCaseA,
    continuousA,
    nonContinuousA,
    requiredRatingA,
    continuousLimitA: continuousLimitA(ratingA, factor),
    headroomContinuousA: (ratingA - nonContinuousA) / factor - continuousA,
    ratingMultiple: worstCaseA / ratingA,
    verdict,
    tripBand: tripBand({
      breakerStandard: rules.breakerStandard,
      ratingMultiple: worstCaseA / ratingA,
      breakerRatingA: ratingA,
    }),
    ...shares,
  };
}

/** Shares go by the nameplate, also where less was measured; they hold on circuits with several outlets. */
function sharesOf({ code, devices, multiOutlet = false }: CircuitInput, ratingA: number) {
  const { singleItemShare, fastenedShare } = RULE_SETS[code];
  const loose = devices.filter(({ fastened }) => !fastened);
  const fastenedA = sum(
    devices.filter(({ fastened }) => fastened),
    highestA,
  );
  return {
    exceedsSingleItemShare:
      multiOutlet &&
      singleItemShare !== null &&
      loose.some((device) => exceeds(labelA(device), singleItemShare.value * ratingA)),
    exceedsFastenedShare: multiOutlet && fastenedShare !== null && exceeds(fastenedA, fastenedShare.value * ratingA),
  };
}

/** What has to be known before a circuit can be called within limits. */
function missingOf(input: CircuitInput): string[] {
  return [
    ...(input.breakerRatingA === null ? ["breaker rating"] : []),
    ...(input.voltageV === null ? ["voltage"] : []),
    ...(input.baseContinuousA === null || input.baseNonContinuousA === null ? ["base load"] : []),
    ...(input.unknownLoads ?? []).map((name) => `load of ${name}`),
  ];
}

function circuitFindings(input: CircuitInput): CircuitFinding[] {
  const named = (devices: readonly CircuitDevice[]): string => devices.map(({ name }) => name).join(", ");
  const findings: CircuitFinding[] = [];
  const add = (code: CircuitFindingCode, severity: CircuitFinding["severity"], evidence: CircuitFinding["evidence"]) =>
    findings.push({ code, severity, evidence });
  const byDefault = input.devices.filter(({ basis }) => basis === "class-default");
  if (byDefault.length > 0) add("load-from-class-default", "caution", { devices: named(byDefault) });
  const assumed = input.devices.filter(({ mapping }) => mapping === "assumed");
  if (assumed.length > 0) add("circuit-not-traced", "caution", { devices: named(assumed) });
  const distrusted = input.devices.filter(({ readingNotTrusted }) => readingNotTrusted);
  if (distrusted.length > 0) add("reading-not-trusted", "caution", { devices: named(distrusted) });
  if (input.sharedNeutral === null) add("shared-neutral-unknown", "note", {});
  if (input.leg && /[A-Z0-9]\s*[-/+,]\s*[A-Z0-9]/i.test(input.leg)) add("leg-unbalanced", "note", { leg: input.leg });
  if (input.tripNote) add("has-tripped", "caution", { tripNote: input.tripNote });
  return findings;
}

/** Current of a device, or of all of a kind, at its highest state. */
export const highestA = (device: CircuitDevice): number =>
  (device.quantity ?? 1) * Math.max(0, ...Object.values(device.states));

/** Current at the state that was seen; at the highest where none was. */
function observedA(device: CircuitDevice): number {
  const seenA = device.states[device.observedState ?? ""];
  return seenA === undefined ? highestA(device) : (device.quantity ?? 1) * seenA;
}

const labelA = (device: CircuitDevice): number => device.nameplateA ?? Math.max(0, ...Object.values(device.states));

function sum(devices: readonly CircuitDevice[], of: (device: CircuitDevice) => number): number {
  return devices.reduce((total, device) => total + of(device), 0);
}

/** Beyond the last digit of any meter: 12 A that were added up of tenths are not above 12 A. */
const exceeds = (value: number, limit: number): boolean => value > limit + 1e-9;
