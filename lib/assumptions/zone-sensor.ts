import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

export const ZONE_SENSOR_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "zone-sensor-offset",
    label: "true zone air temperature less the sensor's",
    value: 0,
    low: -0.5,
    high: 0.5,
    unit: "K",
    source: judgement("wall sensors in use, compared with a calibrated logger"),
    appliesTo: "degree-hours of each zone, apart",
  }),
];
