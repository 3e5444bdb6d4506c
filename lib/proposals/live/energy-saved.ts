import { fanPowerFraction } from "@/lib/energy-model/fan-power";
import { fanKwh } from "@/lib/overcooling/components/fan";
import type { LiveBuilding, LiveZone, SharedNumbers } from "../live-building";
import type { SavingPart } from "../live-picture";
import type { Felt, Move } from "./felt";
import { DESK_FAN_KWH, FOOT_WARMER_W, heaterEnergyGone, heatersGone } from "./heaters-given";
import { type ActingByState, type ZoneEffect, zoneEffect } from "./zone-effect";
import { type LeverAmounts, noLevers } from "./zone-levers";

export type Energy = { electricKwh: number; heatKwh: number };

/** Energy of a year that a variant saves, before any of it is undone: by part, and by zone where a part has zones. */
export type EnergySaved = {
  parts: Record<SavingPart, Energy>;
  byZone: {
    zone: LiveZone;
    levers: LeverAmounts;
    acting: ActingByState | null;
    effect: ZoneEffect;
    /** Share of its heaters that go, and of their energy. */
    gone: number;
    energyGone: number;
    warm: number;
    heaters: Energy;
    addedKwh: number;
  }[];
  fan: FanSums;
};

/** Air of all zones [m³/s·h]; `actingShare` is the share of what is spared that lies in the season and hours. */
export type FanSums = {
  designHours: number;
  before: number;
  after: number;
  actingShare: number;
  cutHours: number;
};

/** Works a variant's energy out for one set of the shared values. The fan serves all zones, so that all are looked at. */
export function energySaved(
  building: Pick<LiveBuilding, "zones" | "occupiedDays">,
  move: Move,
  shared: SharedNumbers,
): EnergySaved {
  const parts: EnergySaved["parts"] = {
    setpoint: none(),
    deadband: none(),
    reheat: none(),
    fan: none(),
    heaters: none(),
    rebound: none(),
  };
  const fan: FanSums = { designHours: 0, before: 0, after: 0, actingShare: 0, cutHours: 0 };
  let sparedActing = 0;
  const byZone: EnergySaved["byZone"] = [];
  for (const zone of building.zones) {
    const own = move.levers.get(zone.zoneId) ?? noLevers;
    const acting = move.acting.byZone.get(zone.zoneId) ?? null;
    const felt = move.felt.get(zone.zoneId) ?? UNFELT;
    const energyGone = own === noLevers ? 0 : heaterEnergyGone(own, felt, shared.heaterRemovalFraction);
    const effect = zoneEffect(zone, own, shared, acting, heaterHeatKw(zone, own, felt, shared));
    if (effect.air) {
      fan.designHours += effect.air.designHours;
      fan.before += effect.air.before;
      fan.after += effect.air.after;
      sparedActing += effect.air.sparedActing;
    }
    if (own === noLevers) continue;
    if (effect.air && zone.airflow && own.schedule > 0)
      fan.cutHours += own.schedule * building.occupiedDays * move.acting.shareOfDays * zone.airflow.designM3ps;
    const gone = heatersGone(own, felt.coldGone, shared.heaterRemovalFraction);
    const heaters = heaterEnergy(zone, energyGone, shared);
    const addedKwh = broughtInKwh(zone, own, acting, felt.warm);
    parts.setpoint.electricKwh += effect.setpointKwh;
    parts.deadband.electricKwh += effect.deadbandKwh;
    parts.reheat.electricKwh += effect.reheatKwh;
    parts.reheat.heatKwh += effect.reheatHeatKwh;
    parts.heaters.electricKwh += heaters.electricKwh;
    parts.heaters.heatKwh += heaters.heatKwh;
    parts.rebound.electricKwh -= addedKwh;
    byZone.push({ zone, levers: own, acting, effect, gone, energyGone, warm: felt.warm, heaters, addedKwh });
  }
  const spared = fan.before - fan.after;
  fan.actingShare = spared > 0 ? sparedActing / spared : 0;
  parts.fan.electricKwh = fanSavedKwh(fan, shared);
  return { parts, byZone, fan };
}

const UNFELT: Felt = { coldGone: 0, coldGoneAllYear: 0, warm: 0, actingShare: 0 };

const none = (): Energy => ({ electricKwh: 0, heatKwh: 0 });

/**
 * The fan's curve at the year's mean airflow; what it spares counts by the share of the air that is spared in season and hours.
 * All of a fan's power ends as heat in the air, which the plant's share of the cooling takes out again.
 */
function fanSavedKwh({ designHours, before, after, actingShare, cutHours }: FanSums, shared: SharedNumbers): number {
  if (designHours === 0) return 0;
  const neededPowerFraction = fanPowerFraction(after / designHours);
  const ofYear = fanKwh({
    designPowerKw: shared.fanSavingFactor * shared.fanPowerPerAirflow,
    hours: designHours,
    powerFraction: fanPowerFraction(before / designHours),
    neededPowerFraction,
  });
  const spared = actingShare * ofYear + shared.fanPowerPerAirflow * cutHours * neededPowerFraction;
  return spared * (1 + shared.mechanicalFraction / shared.cop);
}

/** Mean heat of the heaters that go while the levers act, over the season's hours [kW]. */
function heaterHeatKw(zone: LiveZone, levers: LeverAmounts, felt: Felt, shared: SharedNumbers): number {
  const hours = seasonHours(zone);
  if (levers === noLevers || hours === 0) return 0;
  const all = { coldGone: felt.coldGoneAllYear, actingShare: 1 };
  const gone = heaterEnergyGone(levers, all, shared.heaterRemovalFraction);
  return (zone.heaters.energyKwh * shared.heaterInSeasonFraction * gone) / hours;
}

const seasonHours = ({ states }: LiveZone): number =>
  states ? states.cooling.hours + states.deadband.hours + states.reheat.hours + states.other.hours : 0;

/**
 * Heaters that go, with the cooling that takes their heat away in hours held by the cooling setpoint, less the heat of the
 * plant that they replaced in hours of reheat. Cooling at minimum airflow is left out: part of it leaves with exhaust air.
 */
function heaterEnergy(zone: LiveZone, energyGone: number, shared: SharedNumbers): Energy {
  const electricKwh = zone.heaters.energyKwh * shared.heaterInSeasonFraction * energyGone;
  const { states } = zone;
  const hours = seasonHours(zone);
  if (!states || hours === 0) return { electricKwh, heatKwh: 0 };
  const removed = (states.cooling.hours / hours) * (shared.mechanicalFraction / shared.cop);
  return {
    electricKwh: electricKwh * (1 + removed),
    heatKwh: (-electricKwh * (states.reheat.hours / hours)) / shared.heatEfficiency,
  };
}

/** Electricity of what comes instead [kWh]: foot warmers for the hours acted on, a desk fan for each person newly warm. */
function broughtInKwh(zone: LiveZone, levers: LeverAmounts, acting: ActingByState | null, warm: number): number {
  const hours = acting ? Object.values(acting).reduce((sum, each) => sum + each.hours, 0) : 0;
  const footWarmers = zone.heaters.count * (levers["personal-device"] / 100);
  return (footWarmers * FOOT_WARMER_W * hours) / 1000 + zone.desks * warm * DESK_FAN_KWH;
}
