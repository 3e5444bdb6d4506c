import type { AssumptionSource, ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { Input } from "./calculation/quantity";

/** Makes inputs of the building's assumptions; one input for one id, so that all that share it move together. */
export type AssumptionInputs = {
  /** The assumption as one input of the whole building. */
  shared(id: string, symbol: string): Input;
  /** The assumption drawn apart for one zone or device; one line of the tornado together. */
  apart(id: string, symbol: string, part: string | number): Input;
  resolved(id: string): ResolvedAssumption;
};

export function assumptionInputs(assumptions: readonly ResolvedAssumption[]): AssumptionInputs {
  const byId = new Map(assumptions.map((each) => [each.id, each]));
  const made = new Map<string, Input>();
  const resolved = (id: string): ResolvedAssumption => {
    const found = byId.get(id);
    if (!found) throw new Error(`the assumption "${id}" was not given`);
    return found;
  };
  const make = (id: string, symbol: string, stream: string): Input => {
    const known = made.get(stream);
    if (known) return known;
    const { label, unit, value, low, high, origin, source, override } = resolved(id);
    const input: Input = {
      kind: "input",
      id: stream,
      group: { id, label },
      symbol,
      label,
      unit,
      value,
      low,
      high,
      origin,
      source: override ? `${override.enteredBy}: ${override.reason}` : sourceText(source),
      assumptionId: id,
    };
    made.set(stream, input);
    return input;
  };
  return {
    shared: (id, symbol) => make(id, symbol, id),
    apart: (id, symbol, part) => make(id, symbol, `${id}#${part}`),
    resolved,
  };
}

export function sourceText({ title, edition, place, year, confidence }: AssumptionSource): string {
  const parts = [title, edition, place, year === undefined || title.includes(String(year)) ? undefined : String(year)];
  const said = parts.filter((each) => each !== undefined).join("; ");
  if (confidence === "from-memory") return `${said} (from memory)`;
  return confidence === "second-hand" ? `${said} (second hand)` : said;
}
