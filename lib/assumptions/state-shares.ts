import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";
import { SYSTEM_LABELS, SYSTEM_TYPES, type SystemType } from "./system-type";

type Span = [low: number, value: number, high: number];
const ALWAYS: Span = [1, 1, 1];
const NEVER: Span = [0, 0, 0];
const SINGLE_ZONE = { cooling: ALWAYS, deadband: NEVER, reheat: NEVER };

const SHARES: Record<SystemType, Record<"cooling" | "deadband" | "reheat", Span>> = {
  "vav-reheat-high-minimum": { cooling: [0.15, 0.4, 0.65], deadband: [0.2, 0.35, 0.5], reheat: [0.15, 0.25, 0.35] },
  "vav-reheat-low-minimum": { cooling: [0.4, 0.65, 0.9], deadband: [0.1, 0.25, 0.4], reheat: [0, 0.1, 0.2] },
  "vav-reheat-minimum-unknown": { cooling: [0.25, 0.5, 0.75], deadband: [0.15, 0.3, 0.45], reheat: [0.05, 0.2, 0.35] },
  "single-zone-dx": SINGLE_ZONE,
  "fan-coil": SINGLE_ZONE,
  "heat-pump": SINGLE_ZONE,
};

const WORDS = {
  cooling: "held by the cooling setpoint",
  deadband: "between the setpoints at minimum airflow",
  reheat: "reheating the minimum airflow",
} as const;

/**
 * What zones do in occupied hours of the cooling season, where no trend tells. Drawn apart and divided by their sum,
 * so that they always add up to 1.
 */
export const STATE_SHARE_ASSUMPTIONS: readonly Assumption[] = SYSTEM_TYPES.flatMap((system) =>
  (["cooling", "deadband", "reheat"] as const).map((state) => {
    const [low, value, high] = SHARES[system][state];
    return entry({
      id: `state-share-${state}/${system}`,
      label: `share of hours ${WORDS[state]}, ${SYSTEM_LABELS[system]}`,
      value,
      low,
      high,
      unit: "",
      source: judgement("split of hours by minimum airflow; cooling is known to 0.25 either way"),
      appliesTo: "zones without trends and hours whose state cannot be told",
    });
  }),
);
