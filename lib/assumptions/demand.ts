import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** What overcooling adds to the billed peak. */
export const DEMAND_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "peak-coincidence",
    label: "share of the heaters' power that is on at the billed peak",
    value: 0.12,
    low: 0.05,
    high: 0.25,
    unit: "",
    source: judgement("heaters on and in duty when the building peaks on a hot afternoon"),
    appliesTo: "demand",
  }),
  entry({
    id: "peak-cooling-state-share",
    label: "share of zones held by the cooling setpoint at the billed peak",
    value: 0.9,
    low: 0.6,
    high: 1,
    unit: "",
    source: judgement("nearly all zones call for cooling at the peak"),
    appliesTo: "demand",
  }),
  entry({
    id: "demand-months",
    label: "billing months whose peak is a cooling peak",
    value: 5,
    low: 4,
    high: 6,
    unit: "months",
    source: judgement("May to September"),
    appliesTo: "demand, where the building has no number of its own",
  }),
];
