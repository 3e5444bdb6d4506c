import { predictedZoneTemp } from "@/lib/trends/predicted-zone-temp";

/**
 * Zone air temperature [°C] at the required airflow instead of the minimum, no higher than the target (reference D3);
 * the present one where a lower minimum changes nothing.
 */
export function warmedZoneTempC(now: {
  zoneAirTempC: number;
  supplyAirTempC: number;
  minimumAirflowM3ps: number;
  requiredAirflowM3ps: number;
  targetZoneAirTempC: number;
}): number {
  const predicted = predictedZoneTemp(now);
  return predicted.status === "ok" ? predicted.zoneAirTempC : now.zoneAirTempC;
}
