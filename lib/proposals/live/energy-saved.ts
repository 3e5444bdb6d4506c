import { fanPowerFraction } from "@/lib/energy-model/fan-power";
import { fanKwh } from "@/lib/overcooling/components/fan";
import type { LiveBuilding, LiveZone, SharedNumbers } from "../live-building";
import type { SavingPart } from "../live-picture";
import { coldTakenAway, DESK_FAN_KWH, FOOT_WARMER_W, heatersGone, newlyWarm } from "./heaters-given";
import { type ZoneEffect, zoneEffect } from "./zone-effect";
import { type LeverAmounts, noLevers } from "./zone-levers";

export type Energy = { electricKwh: number; heatKwh: number };

/** Energy of a year that a variant saves, before any of it is undone: by part, and by zone where a part has zones. */
export type EnergySaved = {
  parts: Record<SavingPart, Energy>;
  byZone: {
    zone: LiveZone;
    levers: LeverAmounts;
    effect: ZoneEffect;
    gone: number;
    warm: number;
    heaters: Energy;
    addedKwh: number;
  }[];
  fan: { designHours: number; before: number; after: number; cutHours: number; cutDesignM3ps: number };
};

/** What a zone's people feel of its levers: share of its cold that goes, and of people who come to want it cooler. */
type Felt = { coldGone: number; warm: number };

/** By zone id, worked out once at the stated values: it moves little with what is drawn. */
export type FeltByZone = ReadonlyMap<number, Felt>;

export function feltOf(
  building: Pick<LiveBuilding, "zones" | "tempsC">,
  levers: ReadonlyMap<number, LeverAmounts>,
  shared: SharedNumbers,
): FeltByZone {
  const touched = building.zones.filter((zone) => levers.has(zone.zoneId));
  return new Map(
    touched.map((zone) => {
      const { rises } = zoneEffect(zone, levers.get(zone.zoneId) ?? noLevers, shared);
      return [zone.zoneId, { coldGone: coldTakenAway(zone, rises, building.tempsC), warm: newlyWarm(zone, rises) }];
    }),
  );
}

/** Works a variant's energy out for one set of the shared values. The fan serves all zones, so that all are looked at. */
export function energySaved(
  building: Pick<LiveBuilding, "zones" | "tempsC" | "occupiedDays">,
  levers: ReadonlyMap<number, LeverAmounts>,
  shared: SharedNumbers,
  felt: FeltByZone,
): EnergySaved {
  const parts: EnergySaved["parts"] = {
    setpoint: none(),
    deadband: none(),
    reheat: none(),
    fan: none(),
    heaters: none(),
    rebound: none(),
  };
  const fan = { designHours: 0, before: 0, after: 0, cutHours: 0, cutDesignM3ps: 0 };
  const byZone: EnergySaved["byZone"] = [];
  for (const zone of building.zones) {
    const own = levers.get(zone.zoneId) ?? noLevers;
    const effect = zoneEffect(zone, own, shared);
    if (effect.air) {
      fan.designHours += effect.air.designHours;
      fan.before += effect.air.before;
      fan.after += effect.air.after;
    }
    if (own === noLevers) continue;
    if (effect.air && zone.airflow && own.schedule > 0) {
      fan.cutHours += own.schedule * building.occupiedDays * zone.airflow.designM3ps;
      fan.cutDesignM3ps += zone.airflow.designM3ps;
    }
    const { coldGone, warm } = felt.get(zone.zoneId) ?? UNFELT;
    const gone = heatersGone(own, coldGone, shared.heaterRemovalFraction);
    const heaters = heaterEnergy(zone, gone, shared);
    const addedKwh = broughtInKwh(zone, own, warm);
    parts.setpoint.electricKwh += effect.setpointKwh;
    parts.deadband.electricKwh += effect.deadbandKwh;
    parts.reheat.electricKwh += effect.reheatKwh;
    parts.reheat.heatKwh += effect.reheatHeatKwh;
    parts.heaters.electricKwh += heaters.electricKwh;
    parts.heaters.heatKwh += heaters.heatKwh;
    parts.rebound.electricKwh -= addedKwh;
    byZone.push({ zone, levers: own, effect, gone, warm, heaters, addedKwh });
  }
  if (fan.designHours > 0) {
    const designPowerKw = shared.fanSavingFactor * shared.fanPowerPerAirflow;
    const powerFraction = fanPowerFraction(fan.before / fan.designHours);
    const neededPowerFraction = fanPowerFraction(fan.after / fan.designHours);
    parts.fan.electricKwh =
      fanKwh({ designPowerKw, hours: fan.designHours, powerFraction, neededPowerFraction }) +
      shared.fanPowerPerAirflow * fan.cutHours * neededPowerFraction;
  }
  return { parts, byZone, fan };
}

const UNFELT: Felt = { coldGone: 0, warm: 0 };

const none = (): Energy => ({ electricKwh: 0, heatKwh: 0 });

/**
 * Heaters that go, with the cooling that takes their heat away in hours held by the cooling setpoint, less the heat of the
 * plant that they replaced in hours of reheat. Cooling at minimum airflow is left out: part of it leaves with exhaust air.
 */
function heaterEnergy(zone: LiveZone, gone: number, shared: SharedNumbers): Energy {
  const electricKwh = zone.heaters.energyKwh * shared.heaterInSeasonFraction * gone;
  const { states } = zone;
  if (!states) return { electricKwh, heatKwh: 0 };
  const hours = states.cooling.hours + states.deadband.hours + states.reheat.hours + states.other.hours;
  if (hours === 0) return { electricKwh, heatKwh: 0 };
  const removed = (states.cooling.hours / hours) * (shared.mechanicalFraction / shared.cop);
  return {
    electricKwh: electricKwh * (1 + removed),
    heatKwh: (-electricKwh * (states.reheat.hours / hours)) / shared.heatEfficiency,
  };
}

/** Electricity of what comes instead [kWh]: foot warmers for the season's hours, a desk fan for each person newly warm. */
function broughtInKwh(zone: LiveZone, levers: LeverAmounts, warm: number): number {
  const states = zone.states ? Object.values(zone.states) : [];
  const seasonHours = states.reduce((sum, each) => sum + each.hours, 0);
  const footWarmers = zone.heaters.count * (levers["personal-device"] / 100);
  return (footWarmers * FOOT_WARMER_W * seasonHours) / 1000 + zone.desks * warm * DESK_FAN_KWH;
}
