import type { Evidence } from "@/lib/findings/finding";
import type { ZoneEvidence } from "./zone-evidence";

/** The minimum airflow that a rule held the airflow against: how large, of what, and where it comes from. */
export function airflowEvidence(zone: ZoneEvidence): Evidence {
  const { minimumAirflowM3ps, designAirflowM3ps } = zone.limits;
  return {
    zone: zone.zoneCode,
    minimumAirflowM3ps,
    minimumAirflowOrigin: zone.minimumAirflowOrigin,
    minimumPctOfDesign:
      minimumAirflowM3ps !== null && designAirflowM3ps !== null ? (100 * minimumAirflowM3ps) / designAirflowM3ps : null,
  };
}
