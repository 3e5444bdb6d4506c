import { countOrMerged } from "@/lib/comfort-reports/disclosure/disclosure-words";
import type { Building } from "@/lib/services/buildings/find";
import type { ZoneOverview, ZonesOverview } from "@/lib/services/zones/shown";
import type { Verdict } from "@/lib/trends/diagnosis/diagnose-zone";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import { counted } from "@/lib/units/counted";
import { formatTemperature } from "@/lib/units/format";

export type ZoneLine = {
  id: number;
  code: string;
  name: string;
  floor: string;
  mean: string;
  coldest: string;
  setpoint: string;
  belowPct: string;
  desks: number;
  heaters: number;
  fans: number;
  openReports: number;
  coldReports: string;
  hotReports: string;
  verdict: Verdict | null;
};

/** Zones as lines of a table, in the units that the building is shown in. */
export function zoneLines(
  { zones }: Pick<ZonesOverview, "zones">,
  { temperatureUnit }: Pick<Building, "temperatureUnit">,
): ZoneLine[] {
  const temp = (tempC: number | null | undefined): string =>
    tempC === null || tempC === undefined ? "" : formatTemperature(tempC, temperatureUnit).value;
  return zones.map((each) => ({
    id: each.zone.id,
    code: each.zone.code,
    name: each.zone.name,
    floor: each.zone.floor,
    mean: temp(each.analysis?.exposure.occupiedZoneAirTempC?.mean),
    coldest: temp(each.analysis?.exposure.occupiedZoneAirTempC?.p5),
    setpoint: temp(each.analysis?.statistics.coolingSetpoint?.occupiedMedianC),
    belowPct: belowTargetPct(each),
    desks: each.desks,
    heaters: each.heaters,
    fans: each.fans,
    openReports: each.openReports,
    coldReports: countOrMerged(each.coldReports),
    hotReports: countOrMerged(each.hotReports),
    verdict: each.diagnosis?.verdict ?? null,
  }));
}

/** Share of the occupied cooling-season hours with zone air below the target. */
export function belowTargetPct({ analysis }: Pick<ZoneOverview, "analysis">): string {
  const exposure = analysis?.exposure;
  if (!exposure || exposure.coolingSeasonHours === 0) return "";
  const below = OCCUPIED_STATES.reduce((sum, state) => sum + exposure.byState[state].hoursBelowTarget, 0);
  return String(Math.round((100 * below) / exposure.coolingSeasonHours));
}

export function zonesLede({ zones }: Pick<ZonesOverview, "zones">): string {
  if (zones.length === 0)
    return "The spaces that the controllers serve, with what their trends, devices and reports say.";
  const diagnosed = zones.filter((each) => each.diagnosis);
  const troubled = diagnosed.filter(
    (each) => each.diagnosis && !["healthy", "undetermined"].includes(each.diagnosis.verdict),
  );
  const undetermined = diagnosed.filter((each) => each.diagnosis?.verdict === "undetermined").length;
  const needs = troubled.length === 1 ? "needs" : "need";
  return `${counted(zones.length, "zone")}, ${diagnosed.length} with trends: ${troubled.length} ${needs} attention, ${undetermined} cannot be told apart for want of a trend.`;
}
