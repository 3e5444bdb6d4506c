import { AIR_HEAT_KJ_PER_M3K } from "@/lib/energy-model/air-heat";
import { neededAirflow } from "@/lib/overcooling/components/fan";
import { excessAirflowM3ps } from "@/lib/overcooling/components/reheat";
import { measuredSetpointKwh } from "@/lib/overcooling/components/setpoint";
import { warmedZoneTempC } from "@/lib/overcooling/components/warmed-zone-temp";
import type { LiveStateName, LiveZone, SharedNumbers } from "../live-building";
import type { LeverAmounts } from "./zone-levers";

/** How far the mean zone air of each state moves [K]; falls are negative. */
export type Rises = Record<LiveStateName, number>;

/** What a zone's levers do in a year: rises, kWh saved, and the air moved before and after [m³/s·h]. */
export type ZoneEffect = {
  rises: Rises;
  setpointKwh: number;
  deadbandKwh: number;
  reheatKwh: number;
  /** Bought heat. */
  reheatHeatKwh: number;
  air: { designHours: number; before: number; after: number } | null;
  lessAirM3ps: number;
  minimumM3ps: { before: number; after: number } | null;
};

const STILL: Rises = { cooling: 0, deadband: 0, reheat: 0, other: 0 };

/**
 * First-order effects of a zone's levers, one state at a time so that nothing counts twice, in the order airflow, supply air,
 * setpoint (reference D and I). A lower minimum warms the zone until its cooling setpoint holds it; what a raised cooling
 * setpoint does acts on hours that are held by it, and a lower heating setpoint on hours of reheat.
 */
export function zoneEffect(zone: LiveZone, levers: LeverAmounts, shared: SharedNumbers): ZoneEffect {
  const { states, airflow } = zone;
  const nothing = { setpointKwh: 0, deadbandKwh: 0, reheatKwh: 0, reheatHeatKwh: 0, lessAirM3ps: 0 };
  if (!states) return { rises: STILL, ...nothing, air: null, minimumM3ps: null };
  const { cooling, deadband, reheat } = states;
  const heatLossKwPerK = (shared.heatLossPerArea * zone.floorAreaM2) / 1000;
  const plant = { mechanicalFraction: shared.mechanicalFraction, cop: shared.cop };
  const raiseK = levers["cooling-setpoint"];
  const rises: Rises = { ...STILL, cooling: raiseK };
  const setpointKwh = measuredSetpointKwh({ heatLossKwPerK, overcoolingKh: cooling.hours * raiseK, ...plant });
  if (!airflow) {
    const lowerK = reheat.hours > 0 ? levers["heating-setpoint"] : 0;
    rises.reheat = -lowerK;
    const reheatHeatKwh = (heatLossKwPerK * lowerK * reheat.hours) / shared.heatEfficiency;
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
  const coolingKh = (less * Math.max(0, shared.returnAirTemp - shared.supplyAirTemp) + after * resetK) * reheat.hours;
  const heatedKh =
    (less * Math.max(0, reheat.zoneAirTempC - shared.supplyAirTemp) + after * (resetK + levers["heating-setpoint"])) *
    reheat.hours;
  const heat = AIR_HEAT_KJ_PER_M3K * heatedKh + heatLossKwPerK * levers["heating-setpoint"] * reheat.hours;
  const cooledM3ps = neededAirflow({
    airflow: airflow.coolingM3ps,
    requiredAirflow: Math.min(requiredM3ps, airflow.coolingM3ps),
    zoneAirTempC: cooling.zoneAirTempC,
    warmedZoneAirTempC: cooling.zoneAirTempC + raiseK,
    supplyAirTempC: shared.supplyAirTemp,
  });
  const atMinimumHours = deadband.hours + reheat.hours;
  return {
    rises,
    setpointKwh,
    deadbandKwh: measuredSetpointKwh({
      heatLossKwPerK,
      overcoolingKh: deadband.hours * rises.deadband,
      ...plant,
    }),
    reheatKwh: (AIR_HEAT_KJ_PER_M3K * coolingKh * plant.mechanicalFraction) / plant.cop,
    reheatHeatKwh: heat / shared.heatEfficiency,
    air: {
      designHours: airflow.designM3ps * (cooling.hours + atMinimumHours),
      before: airflow.coolingM3ps * cooling.hours + before * atMinimumHours,
      after: cooledM3ps * cooling.hours + after * atMinimumHours,
    },
    lessAirM3ps: less,
    minimumM3ps: { before, after },
  };
}
