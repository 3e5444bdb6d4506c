import type { PointKind } from "../point-kind";
import { OCCUPIED_STATES } from "../zone-state";
import { causesByTable } from "./decision-table";
import { hasOutdoor } from "./has-outdoor";
import { type Lever, leverEvidence, leversWorthALine } from "./lever-evidence";
import { isOvercooled } from "./overcooled";
import { isSensorFirst } from "./sensor-first";
import type { Cause, CauseCode, ZoneEvidence } from "./zone-evidence";

export type Verdict =
  | "setpoint-first"
  | "minimum-airflow-first"
  | "both-minimum-first"
  | "fault-first"
  | "rezone-first"
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
  raisingSetpointHelps: "yes" | "partly" | "no" | "trade-off" | "unknown";
};

/** Share of occupied cooling-season hours in cooling for the setpoint to be the lever (reference D7). */
const COOLING_FRACTION = 0.7;
/** Share of the degree-hours at minimum airflow for that to come first (reference D7). */
const MINIMUM_FRACTION = 0.5;
/** Undetermined share of hours beyond which the shares say nothing. Judgement, no source. */
const UNDETERMINED_FRACTION = 0.3;

/**
 * What keeps a zone cold (or hot) and which lever comes first, by the decision table and the zone verdict of reference
 * D7. The trends that tell its state must be there before a cold zone gets a lever: without them it is `undetermined`.
 */
export function diagnoseZone(zone: ZoneEvidence): ZoneDiagnosis {
  const named = causesByTable(zone);
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
  "rezone-first": [],
  "personal-need": [],
  "too-hot": [],
  healthy: [],
  undetermined: [],
};

/** Causes that must be put right before any lever is judged: with them the trends do not show what the zone would do. */
export const FAULTS: readonly CauseCode[] = [
  "heater-warms-thermostat",
  "airflow-above-command",
  "reheat-valve-leaking",
  "cold-start",
  "cold-without-cooling",
];

const has = (causes: readonly Cause[], code: CauseCode): boolean => causes.some((each) => each.code === code);

function zoneVerdict(zone: ZoneEvidence, causes: readonly Cause[]): Verdict {
  if (zone.statistics.rules.observed === 0) return "undetermined";
  if (isFaultFirst(zone, causes)) return "fault-first";
  if (has(causes, "rooms-of-different-needs")) return "rezone-first";
  if (has(causes, "hot-reports") || has(causes, "short-of-air")) return "too-hot";
  if (isOvercooled(zone)) return zone.singleZone ? singleZoneVerdict(zone) : leverVerdict(zone);
  if (has(causes, "one-cold-desk") || has(causes, "cold-reports-at-target")) return "personal-need";
  return "healthy";
}

function isFaultFirst(zone: ZoneEvidence, causes: readonly Cause[]): boolean {
  const bias = causes.find((each) => each.code === "sensor-bias");
  return (bias !== undefined && isSensorFirst(zone, bias)) || causes.some(({ code }) => FAULTS.includes(code));
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
  // In winter a zone at minimum airflow or in reheat is being heated: that is no overcooling.
  if (!hasOutdoor(zone) && (minimum || !setpoint)) return "undetermined";
  // Cooling in most hours and most degree-hours at minimum can hold together: then both levers exist.
  if (setpoint === minimum) return "both-minimum-first";
  return setpoint ? "setpoint-first" : "minimum-airflow-first";
}

/** A unit that serves the zone alone has no minimum airflow: it is held by its setpoint, or something else cools it. */
function singleZoneVerdict(zone: ZoneEvidence): Verdict {
  const { byState, coolingSeasonHours, hasTrend } = zone.exposure;
  if (!hasTrend.coolingStage) return "undetermined";
  const totalKh = OCCUPIED_STATES.reduce((sum, state) => sum + byState[state].overcoolingKh, 0);
  const isHeld =
    byState.cooling.hours >= COOLING_FRACTION * coolingSeasonHours ||
    byState.cooling.overcoolingKh > MINIMUM_FRACTION * totalKh;
  return isHeld ? "setpoint-first" : "undetermined";
}

function missingPoints(zone: ZoneEvidence): PointKind[] {
  const { hasTrend } = zone.exposure;
  const points: PointKind[] = [];
  if (!hasTrend.coolingSetpoint) points.push("cooling-setpoint");
  if (zone.singleZone) {
    if (!hasTrend.coolingStage) points.push("cooling-stage");
    return points;
  }
  if (!hasTrend.airflow) points.push("airflow");
  else if (zone.limits.minimumAirflowM3ps === null) points.push("airflow-setpoint");
  if (!hasTrend.reheatValve) points.push("reheat-valve");
  if (!hasOutdoor(zone)) points.push("outdoor-air-temp");
  return points;
}

function raisingHelps(
  zone: ZoneEvidence,
  verdict: Verdict,
  causes: readonly Cause[],
): ZoneDiagnosis["raisingSetpointHelps"] {
  if (verdict === "undetermined") return "unknown";
  if (verdict === "rezone-first") return "trade-off";
  if (verdict === "both-minimum-first") return "partly";
  if (verdict !== "setpoint-first") return "no";
  if (!zone.exposure.hasTrend.coolingSetpoint) return "unknown";
  return has(causes, "setpoint-too-low") ? "yes" : "partly";
}
