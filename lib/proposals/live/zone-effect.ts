import { AIR_HEAT_KJ_PER_M3K } from "@/lib/energy-model/air-heat";
import { neededAirflow } from "@/lib/overcooling/components/fan";
import { excessAirflowM3ps } from "@/lib/overcooling/components/reheat";
import { measuredSetpointKwh } from "@/lib/overcooling/components/setpoint";
import { warmedZoneTempC } from "@/lib/overcooling/components/warmed-zone-temp";
import type { LiveStateName, LiveZone, SharedNumbers } from "../live-building";
import type { Acting } from "./acting-hours";
import type { LeverAmounts } from "./zone-levers";

/** How far the mean zone air of each state moves in the hours in which its levers act [K]; falls are negative. */
export type Rises = Record<LiveStateName, number>;

/** Air moved in a year at design, before and after [m³/s·h], and the part of it that is spared in the season and hours. */
export type MovedAirflow = { designHours: number; before: number; after: number; sparedActing: number };

/** What a zone's levers do in a year: rises, and kWh saved in the hours in which they act. */
export type ZoneEffect = {
  rises: Rises;
  setpointKwh: number;
  deadbandKwh: number;
  reheatKwh: number;
  /** Bought heat. */
  reheatHeatKwh: number;
  air: MovedAirflow | null;
  lessAirM3ps: number;
  minimumM3ps: { before: number; after: number } | null;
};

export type ActingByState = Record<LiveStateName, Acting>;

const STILL: Rises = { cooling: 0, deadband: 0, reheat: 0, other: 0 };

/**
 * First-order effects of a zone's levers, one state at a time so that nothing counts twice, in the order airflow, supply air,
 * setpoint (reference D and I). A lower minimum warms the zone until its cooling setpoint holds it; what a raised cooling
 * setpoint does acts on hours that are held by it, and a lower heating setpoint on hours of reheat. Energy counts in the
 * hours of `acting`. `heaterKw` is the mean heat of heaters that go, which the air has not to carry any more.
 */
export function zoneEffect(
  zone: LiveZone,
  levers: LeverAmounts,
  shared: SharedNumbers,
  acting: ActingByState | null,
  heaterKw = 0,
): ZoneEffect {
  const { states, airflow } = zone;
  const nothing = { setpointKwh: 0, deadbandKwh: 0, reheatKwh: 0, reheatHeatKwh: 0, lessAirM3ps: 0 };
  if (!states || !acting) return { rises: STILL, ...nothing, air: null, minimumM3ps: null };
  const { cooling, deadband, reheat } = states;
  const heatLossKwPerK = (shared.heatLossPerArea * zone.floorAreaM2) / 1000;
  const plant = { mechanicalFraction: shared.mechanicalFraction, cop: shared.cop };
  const raiseK = levers["cooling-setpoint"];
  const rises: Rises = { ...STILL, cooling: raiseK };
  const setpointKwh = measuredSetpointKwh({
    heatLossKwPerK,
    overcoolingKh: acting.cooling.coolingHours * raiseK,
    ...plant,
  });
  if (!airflow) {
    const lowerK = reheat.hours > 0 ? levers["heating-setpoint"] : 0;
    rises.reheat = -lowerK;
    const reheatHeatKwh = (heatLossKwPerK * lowerK * acting.reheat.hours) / shared.heatEfficiency;
    return { rises, ...nothing, setpointKwh, reheatHeatKwh, air: null, minimumM3ps: null };
  }

  const requiredM3ps = shared.requiredAirflowFraction * airflow.designM3ps;
  const before = airflow.minimumM3ps;
  const wanted = before * (1 - levers["minimum-airflow"] / 100);
  const after = Math.min(before, Math.max(requiredM3ps, wanted));
  const heldBelowC = (zone.coolingSetpointC ?? zone.targetZoneAirTempC) + raiseK;
  const warmedC = warmedZoneTempC({
    zoneAirTempC: deadband.zoneAirTempC,
    supplyAirTempC: shared.supplyAirTemp,
    minimumAirflowM3ps: before,
    requiredAirflowM3ps: after,
    targetZoneAirTempC: heldBelowC,
  });
  const resetK = levers["supply-air-temp"];
  rises.deadband = Math.max(0, Math.min(heldBelowC, warmedC + resetK) - deadband.zoneAirTempC);
  rises.reheat = -levers["heating-setpoint"];
  const less = excessAirflowM3ps({ minimumAirflowM3ps: before, requiredAirflowM3ps: after });
  const coolingKh =
    (less * Math.max(0, shared.returnAirTemp - shared.supplyAirTemp) + after * resetK) * acting.reheat.coolingHours;
  const heatedKh =
    (less * Math.max(0, reheat.zoneAirTempC - shared.supplyAirTemp) + after * (resetK + levers["heating-setpoint"])) *
    acting.reheat.hours;
  const heat = AIR_HEAT_KJ_PER_M3K * heatedKh + heatLossKwPerK * levers["heating-setpoint"] * acting.reheat.hours;
  const cooledM3ps = cooledAirflow(zone, airflow, shared, { raiseK, requiredM3ps, heaterKw });
  const atMinimumHours = deadband.hours + reheat.hours;
  const airBefore = airflow.coolingM3ps * cooling.hours + before * atMinimumHours;
  const spared = airflow.coolingM3ps - cooledM3ps;
  return {
    rises,
    setpointKwh,
    deadbandKwh: measuredSetpointKwh({
      heatLossKwPerK,
      overcoolingKh: acting.deadband.coolingHours * rises.deadband,
      ...plant,
    }),
    reheatKwh: (AIR_HEAT_KJ_PER_M3K * coolingKh * plant.mechanicalFraction) / plant.cop,
    reheatHeatKwh: heat / shared.heatEfficiency,
    air: {
      designHours: airflow.designM3ps * (cooling.hours + atMinimumHours),
      before: airBefore,
      after: airBefore - spared * cooling.hours - (before - after) * atMinimumHours,
      sparedActing: spared * acting.cooling.hours + (before - after) * (acting.deadband.hours + acting.reheat.hours),
    },
    lessAirM3ps: less,
    minimumM3ps: { before, after },
  };
}

/**
 * Airflow that a zone needs at its warmer setpoint: what it carries now, less the heat that walls and windows bring in no more
 * and that of heaters which go, into warmer air. Outdoor air's part of the heat loss is met at the coil, not by the zone's air.
 */
function cooledAirflow(
  zone: LiveZone,
  airflow: NonNullable<LiveZone["airflow"]>,
  shared: SharedNumbers,
  { raiseK, requiredM3ps, heaterKw }: { raiseK: number; requiredM3ps: number; heaterKw: number },
): number {
  const presentC = zone.states?.cooling.zoneAirTempC ?? zone.targetZoneAirTempC;
  const envelopeKwPerK =
    (Math.max(0, shared.heatLossPerArea - 1000 * AIR_HEAT_KJ_PER_M3K * shared.outdoorAirPerArea) * zone.floorAreaM2) /
    1000;
  const lessK = (envelopeKwPerK * raiseK + heaterKw) / (AIR_HEAT_KJ_PER_M3K * airflow.coolingM3ps);
  return neededAirflow({
    airflow: airflow.coolingM3ps,
    requiredAirflow: Math.min(requiredM3ps, airflow.coolingM3ps),
    zoneAirTempC: Math.max(shared.supplyAirTemp, presentC - lessK),
    warmedZoneAirTempC: presentC + raiseK,
    supplyAirTempC: shared.supplyAirTemp,
  });
}
