import { stepHours } from "./grid";
import { NEAR_SETPOINT_K, VALVE_OPEN_PCT } from "./state";
import type { ZoneGrids } from "./zone-grids";

/** Heating call from which a box with two maximums raises its airflow [%] (Guideline 36-2021 5.6.5, by reference D5). */
export const RAISING_FROM_PCT = 50;

/**
 * Airflow of a box in reheat near its heating setpoint, at light and at heavy call: with a single maximum it is the same at
 * both, with two it rises. Means are null without such hours.
 */
export type ReheatAirflow = {
  lightHours: number;
  lightAirflowM3ps: number | null;
  heavyHours: number;
  heavyAirflowM3ps: number | null;
};

/** `season` is `coolingSeasonMask` of the grids. */
export function reheatAirflow(grids: ZoneGrids, season: Uint8Array): ReheatAirflow {
  const { reheatValvePct: valves, heatingSetpointC, airflowM3ps, zoneAirTempC } = grids;
  const sums = { light: 0, heavy: 0 };
  const counts = { light: 0, heavy: 0 };
  if (valves && heatingSetpointC && airflowM3ps)
    for (let i = 0; i < season.length; i++) {
      const valve = valves[i] as number;
      const airflow = airflowM3ps[i] as number;
      const offK = Math.abs((zoneAirTempC[i] as number) - (heatingSetpointC[i] as number));
      if (season[i] !== 1 || !(valve > VALVE_OPEN_PCT) || !(offK <= NEAR_SETPOINT_K) || Number.isNaN(airflow)) continue;
      const call = valve < RAISING_FROM_PCT ? "light" : "heavy";
      sums[call] += airflow;
      counts[call]++;
    }
  const hoursEach = stepHours(grids.grid);
  const mean = (call: "light" | "heavy"): number | null => (counts[call] > 0 ? sums[call] / counts[call] : null);
  return {
    lightHours: counts.light * hoursEach,
    lightAirflowM3ps: mean("light"),
    heavyHours: counts.heavy * hoursEach,
    heavyAirflowM3ps: mean("heavy"),
  };
}
