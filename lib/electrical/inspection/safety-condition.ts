import type { SafetyCondition, Severity } from "./inspection-words";

/** Condition of a device with these failed items still open; an approval changes nothing of it. */
export function safetyCondition(open: readonly { severity: Severity }[], inspected: boolean): SafetyCondition {
  if (!inspected) return "not-inspected";
  if (open.some(({ severity }) => severity === "take-out-of-use")) return "out-of-use";
  if (open.some(({ severity }) => severity === "correct-before-use")) return "correct-first";
  return open.length > 0 ? "open-items" : "in-order";
}

/** Days from an inspection until a failed item is due: at once, two weeks, a quarter. Common practice, no source. */
export const DAYS_TO_DUE: Record<Severity, number> = {
  "take-out-of-use": 0,
  "correct-before-use": 14,
  schedule: 90,
  "house-policy": 90,
};
