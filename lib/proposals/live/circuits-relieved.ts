import type { Term, Working } from "@/lib/working/working";
import {
  type CircuitOutcome,
  type CircuitRelief,
  isAboveLimit,
  type LiveCircuit,
  type LiveCircuitDevice,
} from "../live-circuit";
import type { EnergySaved } from "./energy-saved";
import { FOOT_WARMER_W } from "./heaters-given";

type Line = EnergySaved["byZone"][number];

/** Circuits that heaters of the proposal's zones hang on, those that come below their planning limit first. */
export function circuitsRelieved(circuits: readonly LiveCircuit[], byZone: readonly Line[]): CircuitRelief[] {
  const lines = new Map(byZone.map((line) => [line.zone.zoneId, line]));
  const isMeant = (device: LiveCircuitDevice): boolean => device.isHeater && (lines.get(device.zoneId)?.gone ?? 0) > 0;
  return circuits
    .filter(({ devices }) => devices.some(isMeant))
    .map((circuit) => reliefOf(circuit, lines, isMeant))
    .sort((a, b) => ORDER.indexOf(a.outcome) - ORDER.indexOf(b.outcome) || b.todayA - a.todayA);
}

const ORDER: readonly CircuitOutcome[] = ["below-as-expected", "below-if-all-go", "stays-above", "below", "not-known"];

function reliefOf(
  circuit: LiveCircuit,
  lines: ReadonlyMap<number, Line>,
  isMeant: (device: LiveCircuitDevice) => boolean,
): CircuitRelief {
  const { continuousFactor: factor, limitA } = circuit;
  const counted = ({ currentA, isContinuous }: LiveCircuitDevice): number =>
    isContinuous ? currentA : currentA / factor;
  const baseA = (circuit.baseContinuousA ?? 0) + (circuit.baseNonContinuousA ?? 0) / factor;
  const meant = circuit.devices.filter(isMeant);
  const others = circuit.devices.filter((device) => !isMeant(device));
  const restA = baseA + others.reduce((sum, each) => sum + counted(each), 0);
  const left = (device: LiveCircuitDevice): number => 1 - (lines.get(device.zoneId)?.gone ?? 0);
  const replacedA = (device: LiveCircuitDevice): number => {
    const replaced = (lines.get(device.zoneId)?.levers["personal-device"] ?? 0) / 100;
    return circuit.voltageV === null ? 0 : (replaced * FOOT_WARMER_W) / circuit.voltageV;
  };
  const addedA = meant.reduce((sum, each) => sum + replacedA(each), 0);
  const todayA = restA + meant.reduce((sum, each) => sum + counted(each), 0);
  const expectedA = restA + addedA + meant.reduce((sum, each) => sum + counted(each) * left(each), 0);
  const allGoneA = restA + addedA;
  return {
    circuitId: circuit.circuitId,
    name: circuit.name,
    limitA,
    todayA,
    expectedA,
    allGoneA,
    heaters: meant.map(({ label }) => label),
    outcome: outcomeOf(circuit, { todayA, expectedA, allGoneA }),
    working: workingOf(circuit, { meant, counted, left, restA, addedA, expectedA }),
  };
}

function outcomeOf(
  { limitA, baseContinuousA, unknownLoads }: LiveCircuit,
  { todayA, expectedA, allGoneA }: { todayA: number; expectedA: number; allGoneA: number },
): CircuitOutcome {
  const isAbove = (loadA: number): boolean => isAboveLimit(loadA, limitA);
  // What the known loads exceed by themselves stands, whatever else is on the circuit.
  if (isAbove(allGoneA)) return "stays-above";
  if (limitA === null || baseContinuousA === null || unknownLoads.length > 0) return "not-known";
  if (!isAbove(todayA)) return "below";
  return isAbove(expectedA) ? "below-if-all-go" : "below-as-expected";
}

function workingOf(
  circuit: LiveCircuit,
  parts: {
    meant: readonly LiveCircuitDevice[];
    counted: (device: LiveCircuitDevice) => number;
    left: (device: LiveCircuitDevice) => number;
    restA: number;
    addedA: number;
    expectedA: number;
  },
): Working {
  const href = `/devices/circuits/${circuit.circuitId}`;
  const term = (symbol: string, label: string, value: number, unit: string, source: string): Term => ({
    symbol,
    label,
    value,
    unit,
    origin: "computed",
    source,
    href,
  });
  const rest = term("I_r", "everything else on it", parts.restA, "A", "circuit's page");
  const heaters = parts.meant.flatMap((each, k): Term[] => [
    term(`I_{${k + 1}}`, `heater ${each.label} at its highest setting`, parts.counted(each), "A", "device register"),
    term(
      `s_{${k + 1}}`,
      `share of such heaters expected to stay, heater ${each.label}`,
      parts.left(each),
      "",
      "proposal",
    ),
  ]);
  const sum = parts.meant.map((_, k) => `I_{${k + 1}} * s_{${k + 1}}`);
  const added = term("I_n", "foot warmers in their place", parts.addedA, "A", "proposal");
  const hasAdded = parts.addedA > 0;
  return {
    formula: ["I = I_r", ...sum, ...(hasAdded ? ["I_n"] : [])].join(" + "),
    terms: [rest, ...heaters, ...(hasAdded ? [added] : [])],
    result: { symbol: "I", label: `load of circuit ${circuit.name} as expected`, value: parts.expectedA, unit: "A" },
    notes: [
      `A load that runs under 3 h at a time counts by 1/${circuit.continuousFactor} of its current against the planning limit. Shares are means: a heater goes or stays. A licensed electrician judges the circuit, under the code in force there.`,
      ...(circuit.baseContinuousA === null
        ? ["What else is on the circuit is not known: its load is at least this."]
        : []),
    ],
  };
}
