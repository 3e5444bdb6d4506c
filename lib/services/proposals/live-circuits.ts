import type { LiveCircuit } from "@/lib/proposals/live-circuit";
import { type CircuitView, circuitName, circuitViews } from "../circuits/read";
import type { Context } from "../context";

/** Circuits of a building that heaters hang on, as numbers for a proposal's picture. Read at once: their rows are few. */
export const liveCircuits = (ctx: Context, buildingId: number): LiveCircuit[] =>
  circuitViews(ctx, buildingId)
    .filter(({ devices }) => devices.some(({ device }) => isHeater(device.kind) && device.retiredOn === null))
    .map(liveCircuit);

const isHeater = (kind: string): boolean => kind === "space-heater";

function liveCircuit({ circuit, devices, input, limitA }: CircuitView): LiveCircuit {
  return {
    circuitId: circuit.id,
    name: circuitName(circuit),
    ratingA: circuit.breakerRatingA,
    voltageV: circuit.voltageV,
    limitA,
    continuousFactor: input.continuousFactor ?? 1,
    baseContinuousA: circuit.baseContinuousA,
    baseNonContinuousA: circuit.baseNonContinuousA,
    unknownLoads: [...(input.unknownLoads ?? [])],
    devices: devices.flatMap(({ device, load, countsAsContinuous }) =>
      load.status === "unknown"
        ? []
        : [
            {
              label: device.label,
              zoneId: device.zoneId,
              isHeater: isHeater(device.kind),
              currentA: load.currentA,
              isContinuous: countsAsContinuous,
            },
          ],
    ),
  };
}
