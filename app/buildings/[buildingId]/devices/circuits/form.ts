import { checkedOf, choiceOf, numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { CircuitEntry, HookUpEntry } from "@/lib/services/circuits/circuit-input";
import type { CircuitView } from "@/lib/services/circuits/read";

export function circuitFromForm(values: PostedValues): CircuitEntry {
  const neutral = textOf(values, "sharedNeutral");
  return {
    panel: textOf(values, "panel"),
    circuit: textOf(values, "circuit"),
    leg: textOf(values, "leg"),
    ruleSet: choiceOf(values, "ruleSet"),
    breakerRatingA: numberOf(values, "breakerRatingA"),
    voltageV: numberOf(values, "voltageV"),
    receptacleRatingA: numberOf(values, "receptacleRatingA"),
    wiring: choiceOf(values, "wiring"),
    multiOutlet: checkedOf(values, "multiOutlet"),
    listedFor100Percent: checkedOf(values, "listedFor100Percent"),
    baseContinuousA: numberOf(values, "baseContinuousA"),
    baseNonContinuousA: numberOf(values, "baseNonContinuousA"),
    baseLoadNote: textOf(values, "baseLoadNote"),
    sharedNeutral: neutral === "" ? null : neutral === "yes",
    tripNote: textOf(values, "tripNote"),
    note: textOf(values, "note"),
  };
}

export function formFromCircuit(circuit: CircuitView["circuit"]): PostedValues {
  const number = (value: number | null): string => (value === null ? "" : String(value));
  return {
    panel: circuit.panel,
    circuit: circuit.circuit,
    leg: circuit.leg,
    ruleSet: circuit.ruleSet,
    breakerRatingA: number(circuit.breakerRatingA),
    voltageV: number(circuit.voltageV),
    receptacleRatingA: number(circuit.receptacleRatingA),
    wiring: circuit.wiring,
    ...(circuit.multiOutlet ? { multiOutlet: "on" } : {}),
    ...(circuit.listedFor100Percent ? { listedFor100Percent: "on" } : {}),
    baseContinuousA: number(circuit.baseContinuousA),
    baseNonContinuousA: number(circuit.baseNonContinuousA),
    baseLoadNote: circuit.baseLoadNote,
    sharedNeutral: circuit.sharedNeutral === null ? "" : circuit.sharedNeutral ? "yes" : "no",
    tripNote: circuit.tripNote,
    note: circuit.note,
  };
}

/** A fresh circuit: the building's voltage, the rules that go with it, several outlets. */
export const newCircuitForm = (mainsVoltageV: number): PostedValues => ({
  voltageV: String(mainsVoltageV),
  ruleSet: mainsVoltageV >= 220 && mainsVoltageV <= 250 ? "iec-uk-2018" : "nec-2023",
  wiring: "radial",
  multiOutlet: "on",
});

export function hookUpFromForm(values: PostedValues, circuitId: number | null): HookUpEntry {
  return {
    circuitId,
    circuitMapping: choiceOf(values, "circuitMapping"),
    outletKind: choiceOf(values, "outletKind"),
    outletLabel: textOf(values, "outletLabel"),
  };
}
