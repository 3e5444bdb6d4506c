import type { Term, Working } from "@/lib/working/working";
import type { Proof, ProofSum } from "../verification-result";

type Basis = {
  /** Whether the proof tells what was avoided, as a meter's model does, or proposed less present, as paired weeks do. */
  isAvoided: boolean;
  currency: string;
  /** Price of electricity as issued, with its source. */
  price: Term;
  /** Electricity that an occupied day of the season was expected to save, as issued. */
  expected: Working;
  days: number;
};

/**
 * What a proof of energy comes to over the occupied days of its window after: electricity and money, beside what was
 * expected of as many days. The price is the issued one; its own uncertainty is not in the interval.
 */
export function proofSums(energy: Proof, { isAvoided, currency, price, expected, days }: Basis): ProofSum[] {
  const { change, low, high, confidence } = energy;
  if (change === null || low === null || high === null) return [];
  const sign = isAvoided ? 1 : -1;
  const [least, most] = [sign * low, sign * high].sort((a, b) => a - b) as [number, number];
  const perDay: Term = {
    symbol: "V",
    label: "electricity avoided on an occupied day",
    value: sign * change,
    unit: "kWh",
    low: least,
    high: most,
    origin: "computed",
    ...(isAvoided && energy.workings?.[0] ? { working: energy.workings[0] } : { source: "paired weeks" }),
  };
  const dayCount: Term = {
    symbol: "m",
    label: "occupied days of the window after with readings",
    value: days,
    unit: "days",
    origin: "measured",
  };
  const span = `${Math.round(100 * confidence)} % interval of the avoided electricity, carried through.`;
  const avoided = product("A", "electricity avoided over the window after", "kWh", [perDay, dayCount], span);
  const worth = product("W", "worth of it", currency, [termOf(avoided, least * days, most * days), price], span);
  const awaited = product("B", "electricity expected of these days", "kWh", [termOf(expected), dayCount]);
  const awaitedWorth = product("Y", "worth of what was expected", currency, [termOf(awaited), price]);
  const sum = (id: ProofSum["id"], working: Working, by: number | null): ProofSum => ({
    id,
    label: working.result.label,
    unit: working.result.unit,
    value: working.result.value,
    low: by === null ? null : least * by,
    high: by === null ? null : most * by,
    working,
  });
  return [
    sum("avoided", avoided, days),
    sum("worth", worth, days * price.value),
    sum("expected", awaited, null),
    sum("expected-worth", awaitedWorth, null),
  ];
}

function product(symbol: string, label: string, unit: string, terms: [Term, Term], note?: string): Working {
  const [one, other] = terms;
  return {
    formula: `${symbol} = ${one.symbol} * ${other.symbol}`,
    terms,
    result: { symbol, label, value: one.value * other.value, unit },
    ...(note ? { notes: [note] } : {}),
  };
}

const termOf = (working: Working, low?: number, high?: number): Term => ({
  ...working.result,
  origin: "computed",
  ...(low === undefined || high === undefined ? {} : { low, high }),
  working,
});
