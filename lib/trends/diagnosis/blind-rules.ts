import { LEAST_STEP_WEEKS } from "../setpoint-history";
import type { AirflowLimits } from "../state";
import type { ZoneStatistics } from "../zone-statistics";
import { hoursWith, type RuleTrend, type TrendPresence } from "./trend-presence";
import { isWorthNaming } from "./worth-naming";
import type { CauseCode } from "./zone-evidence";

/** What a rule may lack: a trend, or an airflow limit of the zone's record. */
export type RuleNeed = RuleTrend | "minimum-airflow" | "design-airflow";
export type BlindRule = { code: CauseCode; lacks: RuleNeed[] };

type Needs = {
  trends: readonly RuleTrend[];
  limits?: readonly ("minimum-airflow" | "design-airflow")[];
  /** Least hours with all trends for the rule to be able to name its cause, by the predicate that the rule itself uses. */
  canName: (hours: number, observedHours: number) => boolean;
};

/** Rules that name a sign lasting long enough among all observed hours. */
const amongObserved = isWorthNaming;
/** Rules that name a sign lasting long enough among the hours in which it could be seen. */
const amongSeen = (hours: number): boolean => isWorthNaming(hours, hours);
const any = (hours: number): boolean => hours > 0;

/** The trends without which a rule of `ruleHours` counts nothing, as its conditions read them. */
const NEEDS: Partial<Record<CauseCode, Needs>> = {
  "airflow-above-command": {
    trends: ["damper-position", "airflow", "cooling-setpoint", "reheat-valve"],
    limits: ["minimum-airflow"],
    canName: amongObserved,
  },
  "reheat-valve-leaking": {
    trends: ["reheat-valve", "discharge-air-temp", "supply-air-temp", "airflow"],
    canName: amongSeen,
  },
  "reheat-without-heat": {
    trends: ["reheat-valve", "heating-setpoint", "discharge-air-temp", "supply-air-temp"],
    canName: amongSeen,
  },
  "reheat-at-minimum": {
    trends: ["reheat-valve", "airflow", "heating-setpoint"],
    limits: ["minimum-airflow"],
    canName: amongObserved,
  },
  "minimum-airflow-overcooling": {
    trends: ["reheat-valve", "airflow", "cooling-setpoint", "heating-setpoint", "damper-position"],
    limits: ["minimum-airflow"],
    canName: amongObserved,
  },
  "single-maximum": {
    trends: ["reheat-valve", "airflow", "heating-setpoint"],
    limits: ["minimum-airflow", "design-airflow"],
    canName: amongObserved,
  },
  "heater-warms-thermostat": { trends: ["airflow"], canName: any },
  "supply-air-not-reset": { trends: ["supply-air-temp"], canName: any },
  "narrow-deadband": { trends: ["cooling-setpoint", "heating-setpoint"], canName: any },
  "setpoint-too-low": {
    trends: ["cooling-setpoint", "airflow", "reheat-valve"],
    limits: ["minimum-airflow"],
    canName: amongObserved,
  },
  "short-of-air": { trends: ["airflow", "cooling-setpoint"], limits: ["design-airflow"], canName: amongObserved },
};

/**
 * Rules that cannot name their cause whatever the zone does, because the trends they need are not recorded for long enough
 * together, and what they lack: each need that alone would open their eyes, else all that are too short by themselves.
 */
export function blindRules(zone: {
  presence: TrendPresence;
  limits: AirflowLimits;
  statistics: Pick<ZoneStatistics, "coolingSetpoint" | "coolingSetbackK">;
}): BlindRule[] {
  const { presence, limits, statistics } = zone;
  const observed = hoursWith(presence, []);
  const blind: BlindRule[] = [];
  for (const [code, needs] of Object.entries(NEEDS) as [CauseCode, Needs][]) {
    const sees = (trends: readonly RuleTrend[]): boolean => needs.canName(hoursWith(presence, trends), observed);
    const unknown = (needs.limits ?? []).filter((each) => limits[LIMIT_KEY[each]] === null);
    const seen = sees(needs.trends);
    if (seen && unknown.length === 0) continue;
    // A record too short for any rule is no trend's fault.
    if (!sees([])) continue;
    const alone = needs.trends.filter((each) => sees(needs.trends.filter((other) => other !== each)));
    const short = needs.trends.filter((each) => !sees([each]));
    const trends = seen ? [] : alone.length > 0 ? alone : short.length > 0 ? short : needs.trends;
    blind.push({ code, lacks: [...trends, ...unknown] });
  }
  const setpoint = statistics.coolingSetpoint;
  if ((setpoint?.weeks.length ?? 0) < LEAST_STEP_WEEKS)
    blind.push({ code: "setpoint-stepped-down", lacks: ["cooling-setpoint"] });
  if (statistics.coolingSetbackK === null) blind.push({ code: "setback-not-followed", lacks: ["cooling-setpoint"] });
  return blind;
}

const LIMIT_KEY = { "minimum-airflow": "minimumAirflowM3ps", "design-airflow": "designAirflowM3ps" } as const;
