import type { PointKind } from "../point-kind";
import { OCCUPIED_STATES } from "../zone-state";
import { airflowAboveCommand, reheatValveLeaking, reheatWithoutHeat } from "./box-fault-rules";
import { coldStart } from "./cold-start";
import { hotReports, oneColdDesk, shortOfAir } from "./desk-rules";
import { type Lever, leverEvidence, leversWorthALine } from "./lever-evidence";
import { minimumAirflowOvercooling, reheatAtMinimum } from "./minimum-airflow-rules";
import { isOvercooled } from "./overcooled";
import { coldReportsAtTarget, isSensorFirst, sensorBias } from "./sensor-rules";
import { narrowDeadband, setbackNotFollowed, setpointSteppedDown, setpointTooLow } from "./setpoint-rules";
import type { Cause, CauseCode, Rule, ZoneEvidence } from "./zone-evidence";

export type Verdict =
  | "setpoint-first"
  | "minimum-airflow-first"
  | "both-minimum-first"
  | "fault-first"
  | "personal-need"
  | "too-hot"
  | "healthy"
  | "undetermined";

export type ZoneDiagnosis = {
  verdict: Verdict;
  /** In the order of the decision table; several may apply to one zone. */
  causes: Cause[];
  /** Points whose trend would settle what is open. */
  missingPoints: PointKind[];
  raisingSetpointHelps: "yes" | "partly" | "no" | "unknown";
};

/** The rules of reference D7 in the order of its rows: 1, 2, 3, 4, 5, 6, 7, 8, 12, 13, 14, 15. */
const RULES: readonly Rule[] = [
  sensorBias,
  coldReportsAtTarget,
  setpointSteppedDown,
  setbackNotFollowed,
  coldStart,
  airflowAboveCommand,
  reheatValveLeaking,
  reheatWithoutHeat,
  reheatAtMinimum,
  minimumAirflowOvercooling,
  narrowDeadband,
  setpointTooLow,
  oneColdDesk,
  shortOfAir,
  hotReports,
];

/** Share of occupied cooling-season hours in cooling for the setpoint to be the lever (reference D7). */
const COOLING_FRACTION = 0.7;
/** Share of the degree-hours at minimum airflow for that to come first (reference D7). */
const MINIMUM_FRACTION = 0.5;
/** Undetermined share of hours beyond which the shares say nothing. Judgement, no source. */
const UNDETERMINED_FRACTION = 0.3;

/**
 * What keeps a zone cold (or hot) and which lever comes first, by the decision table and the zone verdict of reference
 * D7. The airflow and the valve must be trended before a cold zone gets a lever: without them it is `undetermined`.
 */
export function diagnoseZone(zone: ZoneEvidence): ZoneDiagnosis {
  const named = RULES.flatMap((rule) => rule(zone) ?? []);
  const verdict = zoneVerdict(zone, named);
  const levers = leversWorthALine(zone, LEVERS[verdict]);
  const causes = [...named, ...levers.flatMap((lever) => leverEvidence(zone, lever, named) ?? [])];
  return {
    verdict,
    causes,
    missingPoints: missingPoints(zone),
    raisingSetpointHelps: raisingHelps(zone, verdict, causes),
  };
}

/** What a verdict asks to be changed: a cause carries the evidence for it. */
const LEVERS: Record<Verdict, readonly Lever[]> = {
  "setpoint-first": ["setpoint"],
  "minimum-airflow-first": ["minimum-airflow"],
  "both-minimum-first": ["minimum-airflow", "setpoint"],
  "fault-first": [],
  "personal-need": [],
  "too-hot": [],
  healthy: [],
  undetermined: [],
};

const has = (causes: readonly Cause[], code: CauseCode): boolean => causes.some((each) => each.code === code);

function zoneVerdict(zone: ZoneEvidence, causes: readonly Cause[]): Verdict {
  if (zone.statistics.rules.observed === 0) return "undetermined";
  if (isFaultFirst(zone, causes)) return "fault-first";
  if (has(causes, "hot-reports") || has(causes, "short-of-air")) return "too-hot";
  if (isOvercooled(zone)) return leverVerdict(zone);
  if (has(causes, "one-cold-desk") || has(causes, "cold-reports-at-target")) return "personal-need";
  return "healthy";
}

/** A fault must be put right before any lever is judged: what the trends say of the zone is not what it would be. */
function isFaultFirst(zone: ZoneEvidence, causes: readonly Cause[]): boolean {
  const bias = causes.find((each) => each.code === "sensor-bias");
  return (
    (bias !== undefined && isSensorFirst(zone, bias)) ||
    has(causes, "airflow-above-command") ||
    has(causes, "reheat-valve-leaking") ||
    has(causes, "cold-start")
  );
}

/** The zone verdict under the table. Shares are of all hours, so that hours nobody can place never favour a lever. */
function leverVerdict(zone: ZoneEvidence): Verdict {
  const { byState, coolingSeasonHours, hasTrend } = zone.exposure;
  if (!hasTrend.airflow || !hasTrend.reheatValve || zone.limits.minimumAirflowM3ps === null) return "undetermined";
  if (byState.undetermined.hours > UNDETERMINED_FRACTION * coolingSeasonHours) return "undetermined";
  const totalKh = OCCUPIED_STATES.reduce((sum, state) => sum + byState[state].overcoolingKh, 0);
  const setpoint = byState.cooling.hours >= COOLING_FRACTION * coolingSeasonHours;
  const minimum =
    totalKh > 0 && byState.deadband.overcoolingKh + byState.reheat.overcoolingKh >= MINIMUM_FRACTION * totalKh;
  // Cooling in most hours and most degree-hours at minimum can hold together: then both levers exist.
  if (setpoint === minimum) return "both-minimum-first";
  return setpoint ? "setpoint-first" : "minimum-airflow-first";
}

function missingPoints(zone: ZoneEvidence): PointKind[] {
  const { hasTrend } = zone.exposure;
  const points: PointKind[] = [];
  if (!hasTrend.coolingSetpoint) points.push("cooling-setpoint");
  if (!hasTrend.airflow) points.push("airflow");
  else if (zone.limits.minimumAirflowM3ps === null) points.push("airflow-setpoint");
  if (!hasTrend.reheatValve) points.push("reheat-valve");
  return points;
}

function raisingHelps(
  zone: ZoneEvidence,
  verdict: Verdict,
  causes: readonly Cause[],
): ZoneDiagnosis["raisingSetpointHelps"] {
  if (verdict === "undetermined") return "unknown";
  if (verdict === "both-minimum-first") return "partly";
  if (verdict !== "setpoint-first") return "no";
  if (!zone.exposure.hasTrend.coolingSetpoint) return "unknown";
  return has(causes, "setpoint-too-low") ? "yes" : "partly";
}
