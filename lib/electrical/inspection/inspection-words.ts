/** What a failed item of an inspection asks for, worst first. */
export const SEVERITIES = ["take-out-of-use", "correct-before-use", "schedule", "house-policy"] as const;
export type Severity = (typeof SEVERITIES)[number];

export const ITEM_OUTCOMES = ["pass", "fail", "not-applicable", "not-seen"] as const;
export type ItemOutcome = (typeof ITEM_OUTCOMES)[number];

const SEVERITY_LABELS: Record<Severity, string> = {
  "take-out-of-use": "take out of use now",
  "correct-before-use": "correct before next use",
  schedule: "schedule",
  "house-policy": "house policy",
};
export const severityLabel = (severity: Severity): string => SEVERITY_LABELS[severity];

/** What the words of an outcome mean of the fault that an item names. */
const OUTCOME_LABELS: Record<ItemOutcome, string> = {
  pass: "in order",
  fail: "found so",
  "not-applicable": "does not apply",
  "not-seen": "not looked at",
};
export const outcomeLabel = (outcome: ItemOutcome): string => OUTCOME_LABELS[outcome];

/** How a device stands by what its inspections left open, worst first. */
export const SAFETY_CONDITIONS = ["out-of-use", "correct-first", "open-items", "in-order", "not-inspected"] as const;
export type SafetyCondition = (typeof SAFETY_CONDITIONS)[number];

const CONDITION_LABELS: Record<SafetyCondition, string> = {
  "out-of-use": "take out of use now",
  "correct-first": "correct before next use",
  "open-items": "open items",
  "in-order": "in order",
  "not-inspected": "not inspected",
};
export const conditionLabel = (condition: SafetyCondition): string => CONDITION_LABELS[condition];

/** What an inspection by this tool is and is not. */
export const INSPECTION_CAUTIONS: readonly string[] = [
  "A screening aid: neither an inspection by an authority nor a certificate. The adopted local code, the fire marshal and the insurer decide.",
  "A licensed electrician is needed for circuits and outlets, and for any plug or outlet that was warm.",
  "Nobody opens the device. Unplug what goes out of use: switching it off is not enough.",
  "A reading was taken once, at one setting. That no breaker tripped proves nothing.",
  "A heater that is taken away while the spot stays cold comes back, or moves to a power strip: find out why the zone is cold first.",
  "An approval waives no item of this list.",
];
