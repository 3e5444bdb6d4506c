import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { Finding } from "@/lib/findings/finding";
import type { Range80 } from "@/lib/working/working";
import type { ZoneLever } from "./lever";
import type { DrawnTotals } from "./live/drawn-totals";
import type { LiveBuilding } from "./live-building";
import type { LivePicture } from "./live-picture";
import type { TrialPlan } from "./trial-plan";

/** A variant with its levers and what they would make of the building, also draw by draw. */
export type FrozenVariant = {
  variantId: number;
  name: string;
  levers: ZoneLever[];
  picture: LivePicture;
  drawn: DrawnTotals;
};

/**
 * A proposal as it was issued: inputs, assumptions and results. What is printed from it is printed from nothing else, so
 * that it reads the same years later. `version` is raised when its form changes; older ones stay readable.
 */
export type FrozenProposal = {
  version: 1;
  building: {
    id: number;
    name: string;
    currency: string;
    timeZone: string;
    temperatureUnit: "C" | "F";
    floorAreaM2: number;
    heatingFuel: string;
  };
  proposal: {
    id: number;
    title: string;
    reason: string;
    /** Months of the year, 1 to 12, both included; may run over the new year. */
    seasonFromMonth: number;
    seasonToMonth: number;
    /** Minutes of the day by the wall clock. */
    fromMinute: number;
    toMinute: number;
    /** One-off cost, minor units of the currency. */
    investmentMinor: number;
  };
  plan: TrialPlan;
  /** Named engineer's check of the ventilation; null where no minimum airflow is touched or none was made yet. */
  ventilationCheck: { engineer: string; onDate: string; note: string } | null;
  inputs: LiveBuilding;
  assumptions: ResolvedAssumption[];
  /** Cost of overcooling as it stood, for comparison. */
  cost: { headline: Range80; tier: number; tierLabel: string; findings: Finding[] } | null;
  variants: FrozenVariant[];
  /** The variant that is proposed. */
  chosenVariantId: number;
  issuedBy: string;
  issuedAtMs: number;
};
