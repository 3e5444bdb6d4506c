import { airflowAboveCommand } from "./rules/airflow-above-command";
import { coldReportsAtTarget } from "./rules/cold-reports-at-target";
import { coldStart } from "./rules/cold-start";
import { coldWithoutCooling } from "./rules/cold-without-cooling";
import { heaterWarmsThermostat } from "./rules/heater-warms-thermostat";
import { hotReports } from "./rules/hot-reports";
import { minimumAirflowOvercooling } from "./rules/minimum-airflow-overcooling";
import { narrowDeadband } from "./rules/narrow-deadband";
import { oneColdDesk } from "./rules/one-cold-desk";
import { reheatAtMinimum } from "./rules/reheat-at-minimum";
import { reheatValveLeaking } from "./rules/reheat-valve-leaking";
import { reheatWithoutHeat } from "./rules/reheat-without-heat";
import { roomsOfDifferentNeeds } from "./rules/rooms-of-different-needs";
import { sensorBias } from "./rules/sensor-bias";
import { setbackNotFollowed } from "./rules/setback-not-followed";
import { setpointSteppedDown } from "./rules/setpoint-stepped-down";
import { setpointTooLow } from "./rules/setpoint-too-low";
import { shortCompressorRuns } from "./rules/short-compressor-runs";
import { shortOfAir } from "./rules/short-of-air";
import { singleMaximum } from "./rules/single-maximum";
import { supplyAirHeldForHumidity } from "./rules/supply-air-held-for-humidity";
import { supplyAirNotReset } from "./rules/supply-air-not-reset";
import type { Cause, Rule, ZoneEvidence } from "./zone-evidence";

/** A row of the table with the rules that look for it: more than one where it can show in more than one way. */
export type TableRow = { row: number; rules: readonly Rule[] };

/** The decision table (reference D7), row by row. It is read from the top, and several rows may hold for one zone. */
export const DECISION_TABLE: readonly TableRow[] = [
  { row: 1, rules: [sensorBias, heaterWarmsThermostat, coldReportsAtTarget] },
  { row: 2, rules: [setpointSteppedDown, setbackNotFollowed] },
  { row: 3, rules: [coldStart] },
  { row: 4, rules: [airflowAboveCommand] },
  { row: 5, rules: [reheatValveLeaking] },
  { row: 6, rules: [reheatWithoutHeat] },
  { row: 7, rules: [reheatAtMinimum] },
  { row: 8, rules: [minimumAirflowOvercooling] },
  { row: 9, rules: [singleMaximum] },
  { row: 10, rules: [supplyAirNotReset] },
  { row: 11, rules: [supplyAirHeldForHumidity] },
  { row: 12, rules: [narrowDeadband] },
  { row: 13, rules: [setpointTooLow] },
  { row: 14, rules: [oneColdDesk] },
  { row: 15, rules: [shortOfAir, hotReports] },
  { row: 16, rules: [shortCompressorRuns, coldWithoutCooling] },
  { row: 17, rules: [roomsOfDifferentNeeds] },
];

/** All that the table says of a zone, in its order. */
export const causesByTable = (zone: ZoneEvidence): Cause[] =>
  DECISION_TABLE.flatMap(({ rules }) => rules.flatMap((rule) => rule(zone) ?? []));
