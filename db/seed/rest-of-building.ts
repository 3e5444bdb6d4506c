import { DUCT_GAIN_K } from "./box-controller";
import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";
import type { SimulatedZone } from "./simulate-plan";
import type { Surroundings } from "./surroundings";
import { AIR_HEAT_JPM3K } from "./zone-model";

/** Time in which the structure of the rest of the building gives back what was drawn from it [h]. Common practice, no source. */
const GIVEN_BACK_IN_H = 3;

/**
 * Air that the rest of the building does not need [m³/s], at each step. A cold zone draws heat through partitions and open doors
 * from its neighbours, whose own boxes then have less to cool: no energy comes of it. What is drawn at night is felt
 * when the air handler runs again. Negative where the zones warm their neighbours.
 */
export function restOfBuilding(
  boxes: readonly SimulatedZone[],
  calendar: DemoCalendar,
  around: Surroundings,
): { lessAirM3ps: Float64Array } {
  const hours = STEP_SECONDS / 3600;
  const lessAirM3ps = new Float64Array(calendar.span.count);
  let owedWh = 0;
  for (let i = 0; i < calendar.span.count; i++) {
    const interiorC = around.interiorAirTempC[i] as number;
    for (const { plan, run } of boxes)
      owedWh += plan.model.partitionWpK * (interiorC - (run.airTempC[i] as number)) * hours;
    if (calendar.systemOn[i] !== 1) continue;
    const sparedW = owedWh / GIVEN_BACK_IN_H;
    owedWh -= sparedW * hours;
    const differenceK = Math.max(1, interiorC - (around.supplyAirTempC[i] as number) - DUCT_GAIN_K);
    lessAirM3ps[i] = sparedW / (AIR_HEAT_JPM3K * differenceK);
  }
  return { lessAirM3ps };
}
