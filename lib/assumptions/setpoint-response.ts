import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** What decides how far a cooling setpoint moves a meter's change point, besides what zones are measured to do. */
export const SETPOINT_RESPONSE_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "setpoint-floor-area-share",
    label: "share of the floor area whose cooling setpoint is raised",
    value: 1,
    low: 0.8,
    high: 1,
    unit: "",
    source: judgement("all zones of the building but a few that keep theirs, such as rooms for equipment"),
    appliesTo: "what a kelvin of setpoint is worth by the meter",
  }),
  entry({
    id: "sensible-coil-load-share",
    label: "sensible share of the cooling coil's load",
    value: 0.75,
    low: 0.65,
    high: 0.85,
    unit: "",
    source: judgement("humid climates low, dry ones high; moisture does not follow a setpoint"),
    appliesTo: "what a kelvin of setpoint is worth by the meter",
  }),
];
