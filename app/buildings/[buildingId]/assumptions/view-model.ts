import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import { formatNumber } from "@/lib/units/format";

/** A figure with the digits that it was given with. */
export function figure(value: number): string {
  const digits = String(Number(value.toPrecision(6)));
  const decimals = digits.includes("e") ? 6 : (digits.split(".")[1]?.length ?? 0);
  return formatNumber(value, { decimals });
}

export const rangeFigure = ({ low, high }: Pick<ResolvedAssumption, "low" | "high">): string =>
  low === high ? "none" : `${figure(low)} to ${figure(high)}`;

const CONFIDENCE = {
  published: "",
  "second-hand": ", second hand",
  "from-memory": ", from memory",
  judgement: "",
} as const;

/** Where a value comes from, and how far the source was followed. */
export function sourceWords({ origin, override, source }: ResolvedAssumption): string {
  if (origin === "entered" && override) return `${override.reason} (${override.enteredBy})`;
  const { title, edition, place, year, confidence } = source;
  return [title, edition, place, year].filter(Boolean).join(", ") + CONFIDENCE[confidence];
}

export type AssumptionGroup = { id: string; title: string; assumptions: ResolvedAssumption[] };

/** Assumptions that this building's figure rests on, then the others: those of other systems and simpler methods. */
export function usedFirst(assumptions: readonly ResolvedAssumption[], used: ReadonlySet<string>): AssumptionGroup[] {
  const isUsed = (each: ResolvedAssumption) => used.has(each.id);
  return [
    { id: "used", title: "Used for this building", assumptions: assumptions.filter(isUsed) },
    { id: "others", title: "Not used here", assumptions: assumptions.filter((each) => !isUsed(each)) },
  ].filter((group) => group.assumptions.length > 0);
}

export function assumptionsLede(assumptions: readonly ResolvedAssumption[], used: ReadonlySet<string>): string {
  const here = assumptions.filter((each) => used.has(each.id));
  const own = here.filter((each) => each.origin === "entered").length;
  return `Numbers that the cost takes as given: ${here.length} of them here, ${own} of your own. Give your own value with its range and the reason; the default stays on record.`;
}
