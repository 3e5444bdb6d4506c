import type { Finding } from "@/lib/findings/finding";
import type { Range80, Working } from "@/lib/working/working";
import type { TornadoLine } from "./calculation/tornado";

export const TIER_LABELS = {
  0: "screening",
  1: "estimate",
  2: "measured zones, modelled plant",
  3: "calibrated to the meter",
  4: "verified",
} as const;
export type Tier = keyof typeof TIER_LABELS;

export const COMPONENT_LABELS = {
  "heater-energy": "space heaters",
  "heat-removal": "cooling that removes the heaters' heat",
  "setpoint-screening": "cooling setpoint, by percentage",
  setpoint: "cooling setpoint below the target",
  deadband: "cold at minimum airflow",
  reheat: "reheat of excess air",
  fan: "fan for excess air",
  demand: "demand charge",
  complaints: "work on complaints",
} as const;
export type ComponentId = keyof typeof COMPONENT_LABELS;

/** Money a year, major units of the building's currency. Ranges are 80 % ranges over the draws. */
export type ComponentResult = {
  id: ComponentId;
  label: string;
  /** Stated values; null where the component has no energy of its own. */
  electricKwh: number | null;
  /** Bought heating energy other than electricity; negative for a credit. */
  heatKwh: number | null;
  /** With every input at its stated value: the result of `working`. */
  statedValue: number;
  /** Its part of the headline's P50; the parts add up to it. */
  contribution: number;
  p10: number;
  p90: number;
  working: Working;
};

export type ZonePart = { componentId: ComponentId; statedValue: number; contribution: number };

export type ZoneResult = {
  /** Null for floor area that no zone covers. */
  zoneId: number | null;
  code: string;
  floorAreaM2: number;
  /** False for a zone without a usable record in an assessment that rests on records. */
  measured: boolean;
  statedValue: number;
  contribution: number;
  p10: number;
  p90: number;
  byComponent: ZonePart[];
  /** The zone's stated cost: its components and one level of theirs; the whole stands in the components' workings. */
  working: Working;
};

/** What changes would save of the cost in their first year, with the zones that are left out of it. */
export type Avoidable = EnergyRange & { zonesLeftOut: string[] };

/** A total with the working of its stated value: its components, and each of those zone by zone. */
export type EnergyRange = Range80 & { stated: number; working: Working };

export type TierResult = Range80 & { tier: Tier; label: string };

export type Assessed = {
  status: "ok";
  tier: { number: Tier; label: string };
  /** Proofs that a verified figure rests on; empty below tier 4. */
  verifiedBy: { proposalId: number; title: string; foundOn: string }[];
  headline: Range80;
  /** Sum of the components' stated values: lies below the P50 where ranges are skewed. */
  statedTotal: number;
  /** Of the stated total: the components alone, each with a working of its own. */
  working: Working;
  /** Part of the cost that heaters given up and changes that last would save; the rest is waste that stays. */
  avoidable: Avoidable;
  /** Net cost of space heaters outside the cooling season: beside the cost of overcooling, not in it; null without any. */
  heatingSeason: EnergyRange | null;
  energy: { electricKwh: EnergyRange; heatKwh: EnergyRange };
  emissionsKgCo2: EnergyRange;
  components: ComponentResult[];
  zones: ZoneResult[];
  /** One line for each uncertain assumption or kind of reading, widest first. `id` is the assumption's where it is one. */
  tornado: (TornadoLine & { assumptionId: string | null })[];
  /** Share of the distinct inputs used that are defaults of the tool, 0 to 1. */
  defaultsShare: number;
  findings: Finding[];
  assumptionIds: string[];
  lowerTiers: TierResult[];
};

/** `blocked` when an input makes every figure meaningless; the findings say which and what to do. */
export type BuildingAssessment = Assessed | { status: "blocked"; findings: Finding[] };
