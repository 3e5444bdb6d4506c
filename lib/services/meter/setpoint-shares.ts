import type { BuildingRow } from "@/db/queries/buildings";
import { listZones } from "@/db/queries/zones";
import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { StatedShare } from "@/lib/energy-model/meter/kelvin-working";
import { sourceText } from "@/lib/overcooling/assumption-inputs";
import type { Context } from "../context";
import type { BuildingAnalysis } from "../zone-analysis/read";

export type SetpointShares = { area: StatedShare; cooling: StatedShare; sensible: StatedShare };

/**
 * What decides how far a setpoint moves the change point of a building: shares of floor area and of sensible heat as
 * assumed, and the share of time that zones are held by their cooling setpoint as measured where it is.
 */
export function setpointShares(
  ctx: Context,
  building: BuildingRow,
  analysis: BuildingAnalysis,
  assumptions: readonly ResolvedAssumption[],
): SetpointShares {
  return {
    area: assumedShare(assumptions, "setpoint-floor-area-share"),
    cooling:
      measuredCoolingShare(ctx, building, analysis) ??
      assumedShare(assumptions, `state-share-cooling/${building.systemType}`),
    sensible: assumedShare(assumptions, "sensible-coil-load-share"),
  };
}

/** An assumption as a term of the working. */
export function assumedShare(assumptions: readonly ResolvedAssumption[], id: string): StatedShare {
  const found = assumptions.find((each) => each.id === id);
  if (!found) throw new Error(`the assumption "${id}" is not among those of the building`);
  const { label, value, low, high, origin, override, source } = found;
  return {
    label,
    value,
    low,
    high,
    origin,
    source: override ? `${override.enteredBy}: ${override.reason}` : sourceText(source),
    assumptionId: id,
  };
}

/** Zones need this many hours whose state is told before they replace the assumption [h]. Judgement, no source. */
const LEAST_HOURS = 100;

/**
 * Share of the occupied cooling-season hours in which zones are held by their cooling setpoint, weighted by floor area.
 * Hours whose state cannot be told count for neither; the range lets them be all of one or all of the other. Hours stand
 * for coil load here: a zone at its setpoint draws at least as much of it as one at minimum airflow.
 */
function measuredCoolingShare(ctx: Context, building: BuildingRow, { zones }: BuildingAnalysis): StatedShare | null {
  const areas = new Map(listZones(ctx.db, building.id).map((zone) => [zone.id, zone.floorAreaM2]));
  const known = [...areas.values()].filter((area): area is number => area !== null);
  const usualM2 = known.length > 0 ? known.reduce((sum, each) => sum + each, 0) / known.length : 1;
  let [cooling, told, untold, hours] = [0, 0, 0, 0];
  for (const { zoneId, exposure } of zones) {
    const weight = areas.get(zoneId) ?? usualM2;
    const of = exposure.byState;
    const toldHours = of.cooling.hours + of.deadband.hours + of.reheat.hours;
    cooling += weight * of.cooling.hours;
    told += weight * toldHours;
    untold += weight * (of.undetermined.hours + of.fault.hours);
    hours += toldHours;
  }
  if (hours < LEAST_HOURS) return null;
  return {
    label: "share of occupied cooling-season hours in which zones are held by their cooling setpoint, by floor area",
    value: cooling / told,
    low: cooling / (told + untold),
    high: (cooling + untold) / (told + untold),
    origin: "measured",
    source: `trends of ${zones.length} ${zones.length === 1 ? "zone" : "zones"}; the range is what hours of unknown state leave open`,
    href: "/zones",
  };
}
