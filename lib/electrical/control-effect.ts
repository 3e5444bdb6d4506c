/** What turning a control changes, as measured: the watts, only the speed, or nothing at all. */
export const CONTROL_EFFECTS = ["power", "speed-only", "nothing"] as const;
export type ControlEffect = (typeof CONTROL_EFFECTS)[number];

const WORDS: Record<ControlEffect, string> = {
  power: "changes the watts",
  "speed-only": "changes the speed, not the watts",
  nothing: "changes nothing",
};
export const controlEffectLabel = (effect: ControlEffect): string => WORDS[effect];
