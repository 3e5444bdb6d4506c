/** Where an assumption's value comes from. `confidence`: read in the source, second hand, from memory, or judgement. */
export type AssumptionSource = {
  title: string;
  edition?: string;
  place?: string;
  year?: number;
  url?: string;
  confidence: "published" | "second-hand" | "from-memory" | "judgement";
};

/** A number the tool takes as given until a building's people say better. `low <= value <= high`. */
export type Assumption = {
  id: string;
  label: string;
  value: number;
  low: number;
  high: number;
  unit: string;
  distribution: "triangular";
  source: AssumptionSource;
  /** What uses it, in words. */
  appliesTo: string;
  reviewedOn: string;
};

/** A building's own value, with who, when and why. The default stays visible beside it. */
export type AssumptionOverride = {
  assumptionId: string;
  value: number;
  low: number;
  high: number;
  reason: string;
  enteredBy: string;
  enteredAtMs: number;
};

/** An assumption as it applies to one building. */
export type ResolvedAssumption = Assumption & {
  origin: "default" | "entered";
  override?: AssumptionOverride;
  /** The tool's own figures, when the building has its own in their place. */
  byDefault?: Pick<Assumption, "value" | "low" | "high">;
};
