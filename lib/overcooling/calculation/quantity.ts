import type { Origin } from "@/lib/working/working";

/** A value that goes into the assessment from outside. `low < high` makes it uncertain: triangular, drawn by its id. */
export type Input = {
  kind: "input";
  /** Names the stream of random numbers, so that the same input gets the same draws in every study of a seed. */
  id: string;
  /** Inputs of one group are one line of the tornado: the assumption, or the kind of reading, that they share. */
  group: { id: string; label: string };
  symbol: string;
  label: string;
  unit: string;
  value: number;
  low: number;
  high: number;
  origin: Origin;
  source?: string;
  assumptionId?: string;
  href?: string;
};

/** A value worked out from others. `compute` takes the terms in order and is the formula: nothing else computes it. */
export type Step = {
  kind: "step";
  symbol: string;
  label: string;
  unit: string;
  formula: string;
  terms: readonly Quantity[];
  compute: (...values: number[]) => number;
  notes?: string[];
  source?: string;
};

/** A sum of any number of parts; each is a term under a symbol of its own. */
export type Sum = {
  kind: "sum";
  symbol: string;
  label: string;
  unit: string;
  formula: string;
  parts: readonly { symbol: string; label: string; quantity: Quantity }[];
  notes?: string[];
};

export type Quantity = Input | Step | Sum;

export const step = (each: Omit<Step, "kind">): Step => ({ kind: "step", ...each });
export const sum = (each: Omit<Sum, "kind">): Sum => ({ kind: "sum", ...each });

type Exact = Pick<Input, "symbol" | "label" | "unit" | "value" | "origin"> & Partial<Input>;

/** An input that is taken as exact. */
export const exact = (each: Exact): Input => ({
  id: each.symbol,
  group: { id: each.symbol, label: each.label },
  ...each,
  kind: "input",
  low: each.value,
  high: each.value,
});
