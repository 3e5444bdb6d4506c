import type { PointKind } from "@/lib/trends/point-kind";
import { nameWords } from "./name-words";
import { proposeMeter } from "./propose-meter";

export type Confidence = "high" | "medium" | "low";

/** What a point seems to be. `skip` is true when the name says that it is none of the kinds kept here. */
export type KindProposal = { kind: PointKind | null; skip: boolean; confidence: Confidence; reason: string };

const list = (text: string): readonly string[] => text.split(" ");
const SETPOINT = list("setpoint setpoints stpt setpt stp spt setp sollwert soll csp hsp setting");
const COOL = list("clg cool cooling csp kuehl kühl cooled");
const HEAT = list("htg heat heating hsp heiz");
const UNOCCUPIED = list("unocc unoc unooc unoccupied ngt night setback standby stby");
const SPACE = list("zn zone rm room space spc raum znt zt rmt raumtemperatur area");
const TEMP = list("temp tmp temperature temperatur temps znt zt rmt raumtemperatur oat dat sat rat mat lat");
const OUTDOOR = list("oa oat outside outdoor outdoors ambient aussen außen osa");
const RETURN_OR_MIXED = list("ra rat return ma mat mad mixed exhaust ea relief econ economizer");
const WATER = list(
  "chw chws chwr chwst chwrt hw hws hwr hwst hwrt hhw hhws hhwr chilled water boiler condenser cws cwr glycol steam tower pump chiller",
);
const ELSE = list(
  "pressure static dp press humidity rh humid feuchte co2 voc fan sf rf ef vfd speed power kw kwh energy plug heater lighting light alarm filter smoke enthalpy dewpoint",
);
const RADIATOR = list("rad radiator radiant fin fintube baseboard perimeter convector");
const FLOW = list("flow flo airflow cfm volumenstrom");
const DAMPER = list("dpr damper dmpr dmp klappe");
const DISCHARGE = list("da dat discharge disch dis la lat leaving");
const SUPPLY = list("sa sat supply sup zuluft");
const COMPRESSOR = list("compressor compr dx");
const OUTPUT = list("o out output valve vlv cmd command pos position signal pct loop");
const AIR_HANDLER = list("ahu rtu mau doas acu ah ahus oau eru s ac hvac");
const TERMINAL = list("vav box tu fpb fcu vv cav dd tb fptu vavr");

/**
 * Proposes the kind of a point from its name. What is not a zone comes first (`DA-T` and `FLOW-SP` are the classic
 * wrong matches), then setpoints, then zone temperature; a bare "Temp" says too little and is left to a person.
 */
export function proposeKind(name: string): KindProposal {
  const words = nameWords(name);
  const has = (set: readonly string[]): boolean => words.some((word) => set.includes(word));
  const last = words.at(-1) ?? "";
  const isSetpoint =
    has(SETPOINT) || words.some((word, i) => (word === "sp" && i > 0) || (word === "set" && words[i + 1] === "point"));
  const spaceFirst = words[0] === "sp";
  const isTemp =
    has(TEMP) ||
    last === "t" ||
    words.some((word, i) => word === "t" && (SPACE.includes(words[i - 1] ?? "") || (spaceFirst && i === 1)));
  const saysSpace =
    has(SPACE) || (spaceFirst && isTemp) || words.some((word, i) => word === "z" && /^\d/.test(words[i + 1] ?? ""));
  const isTerminal = has(TERMINAL) || saysSpace;
  const isAirHandler =
    !has(TERMINAL) && words.some((word, i) => AIR_HANDLER.includes(word) && (word.length > 1 || i === 0));

  const found = (kind: PointKind, confidence: Confidence, reason: string): KindProposal => ({
    kind,
    skip: false,
    confidence,
    reason,
  });
  const skip = (reason: string): KindProposal => ({ kind: null, skip: true, confidence: "medium", reason });

  const meter = proposeMeter(words);
  if (meter) return meter;
  if (has(RADIATOR)) return skip("a radiator's output, which is not kept");
  if (has(WATER)) return skip("a water or plant point, not a zone's");
  if (has(OUTDOOR)) {
    if (has(DAMPER) || has(FLOW) || isSetpoint || has(ELSE))
      return skip("an outdoor air point other than its temperature");
    return isTemp
      ? found("outdoor-air-temp", "high", "outdoor air temperature by its name")
      : skip("an outdoor air point");
  }
  if (has(RETURN_OR_MIXED)) return skip("return, mixed or exhaust air, not a zone's");
  if (has(FLOW)) {
    if (isAirHandler && !isTerminal) return skip("an air handler's flow, not a zone's");
    if (words.includes("min") || words.includes("max")) return skip("a flow limit, not a measured flow");
    return isSetpoint
      ? found("airflow-setpoint", "high", "flow setpoint by its name")
      : found("airflow", "high", "airflow by its name");
  }
  if (has(DAMPER)) {
    if (isAirHandler && !isTerminal) return skip("an air handler's damper, not a zone's");
    return found("damper-position", isTerminal ? "high" : "medium", "damper by its name");
  }
  if ((has(ELSE) || isCarbon(words)) && !(isTemp && saysSpace && !words.includes("fan")))
    return skip(KEPT_ON_REQUEST.find(([set]) => has(set))?.[1] ?? "another quantity, which is not kept");
  if (isSetpoint) return proposeSetpoint({ has, words, isAirHandler: isAirHandler && !saysSpace, found, skip });
  if (has(DISCHARGE) || has(SUPPLY)) {
    if (!isTemp) return skip("a supply air point other than its temperature");
    if (isTerminal) return found("discharge-air-temp", "high", "discharge air temperature of a zone's unit");
    return found(
      "supply-air-temp",
      isAirHandler ? "high" : "low",
      isAirHandler ? "supply air of an air handler" : "supply air; which unit's is not said",
    );
  }
  if (words.some((word) => /^(?:un)?occ(?:upied|upancy)?$/.test(word)) && !isTemp) {
    return found("occupancy", "high", "occupancy by its name");
  }
  if (words.includes("reheat") || words.includes("rht")) return found("reheat-valve", "high", "reheat by its name");
  if (has(HEAT) && has(OUTPUT) && !isTemp) {
    if (isAirHandler && !isTerminal) return skip("an air handler's heating coil, not a zone's");
    return found("reheat-valve", isTerminal ? "high" : "medium", "heating output by its name");
  }
  if (has(COMPRESSOR) && !isTemp && !isAirHandler) return found("cooling-stage", "medium", "a compressor by its name");
  if ((has(COOL) || has(HEAT)) && !isTemp) return skip("a heating or cooling command other than a zone's reheat");
  if (isTemp && saysSpace) return found("zone-air-temp", "high", "zone air temperature by its name");
  if (isTemp)
    return {
      kind: null,
      skip: false,
      confidence: "low",
      reason: "a temperature, but the name does not say of what: choose",
    };
  return {
    kind: null,
    skip: false,
    confidence: "low",
    reason: "the name does not say what it is: choose, or leave it out",
  };
}

/** Quantities that a few rules of the diagnosis use: left out unless someone chooses them. */
const KEPT_ON_REQUEST: readonly [words: readonly string[], reason: string][] = [
  [list("rh humidity humid feuchte"), "a humidity: choose it if it is the zone's or the return air's"],
  [list("heater"), "a heater's quantity: choose it if it is the power of a portable heater"],
];

/** `CO2` and `CO`, which are split before their digit. */
const isCarbon = (words: readonly string[]): boolean =>
  words.some((word, i) => word === "co" && (i === words.length - 1 || words[i + 1] === "2"));

function proposeSetpoint(at: {
  has: (set: readonly string[]) => boolean;
  words: readonly string[];
  isAirHandler: boolean;
  found: (kind: PointKind, confidence: Confidence, reason: string) => KindProposal;
  skip: (reason: string) => KindProposal;
}): KindProposal {
  const { has, words, found, skip } = at;
  if (has(DISCHARGE) || has(SUPPLY)) return skip("a supply air setpoint, which is not a zone's");
  if (words.includes("min") || words.includes("max")) return skip("a limit, not an active setpoint");
  if (has(UNOCCUPIED)) return skip("an unoccupied setpoint; the active one is used");
  const [cool, heat] = [has(COOL), has(HEAT)];
  const sure: Confidence = at.isAirHandler ? "medium" : "high";
  if (cool && !heat) return found("cooling-setpoint", sure, "cooling setpoint by its name");
  if (heat && !cool) return found("heating-setpoint", sure, "heating setpoint by its name");
  return found(
    "cooling-setpoint",
    "low",
    "a setpoint that does not say cooling or heating: check that it is the cooling one",
  );
}
