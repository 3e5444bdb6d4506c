import type { Finding } from "@/lib/findings/finding";
import type { AnnualExposure, ZoneExposure } from "@/lib/trends/zone-exposure";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";

/** Mean depth below the target above which a sensor fault is more likely than overcooling (reference J). */
const MOST_MEAN_DEPTH_K = 6;

/** Why a zone's record cannot carry money, or null. */
export function recordFault(annual: AnnualExposure, exposure: ZoneExposure | null, targetC: number): Finding | null {
  if (exposure && Math.abs(exposure.targetZoneAirTempC - targetC) > 0.001) {
    return {
      code: "record-of-another-target",
      severity: "caution",
      evidence: { recordTargetC: exposure.targetZoneAirTempC, targetC },
    };
  }
  const hours = OCCUPIED_STATES.reduce((sum, state) => sum + annual.byState[state].hours, 0);
  if (!(hours > 0)) return { code: "record-without-hours", severity: "caution", evidence: {} };
  const overcoolingKh = OCCUPIED_STATES.reduce((sum, state) => sum + annual.byState[state].overcoolingKh, 0);
  if (overcoolingKh / hours > MOST_MEAN_DEPTH_K) {
    return {
      code: "zone-air-implausible",
      severity: "caution",
      evidence: { meanBelowTargetK: overcoolingKh / hours, mostK: MOST_MEAN_DEPTH_K },
    };
  }
  return null;
}
