import { RAISING_FROM_PCT } from "../../reheat-airflow";
import { AT_MINIMUM_FACTOR } from "../../state";
import { airflowEvidence } from "../airflow-evidence";
import { seenIn } from "../seen-in";
import type { Cause, ZoneEvidence } from "../zone-evidence";
import { reheatAtMinimum } from "./reheat-at-minimum";

/** Airflow of single-maximum boxes in heating, share of design (reference D7, row 9: 30 to 50 %). */
const LEAST_FRACTION = 0.3;
/** Hours of heavy heating call from which its airflow is known. Judgement, no source. */
const LEAST_HOURS = 2;

/**
 * Row 9: as row 7, and the box gives the same airflow, 30 % of design or more, at light and at heavy call for heat: its
 * cooling minimum is its heating airflow. A box with two maximums would reheat a small minimum first and raise it later.
 */
export function singleMaximum(zone: ZoneEvidence): Cause | null {
  const { designAirflowM3ps } = zone.limits;
  const { lightHours, lightAirflowM3ps, heavyHours, heavyAirflowM3ps } = zone.statistics.reheatAirflow;
  if (designAirflowM3ps === null || lightAirflowM3ps === null || heavyAirflowM3ps === null) return null;
  if (lightHours < LEAST_HOURS || heavyHours < LEAST_HOURS || !reheatAtMinimum(zone)) return null;
  if (lightAirflowM3ps < LEAST_FRACTION * designAirflowM3ps) return null;
  if (heavyAirflowM3ps > AT_MINIMUM_FACTOR * lightAirflowM3ps) return null;
  return {
    code: "single-maximum",
    severity: "caution",
    evidence: {
      ...airflowEvidence(zone),
      trends: ["airflow", "reheat-valve", "zone-air-temp", "heating-setpoint"],
      ...seenIn(zone, "reheatAtMinimum"),
      hours: lightHours + heavyHours,
      lightHours,
      lightAirflowM3ps,
      heavyHours,
      heavyAirflowM3ps,
      heavyFromPct: RAISING_FROM_PCT,
      lightPctOfDesign: (100 * lightAirflowM3ps) / designAirflowM3ps,
    },
  };
}
