/** What a failed item of an inspection asks for, worst first. */
export const SEVERITIES = ["take-out-of-use", "correct-before-use", "schedule", "house-policy"] as const;
export type Severity = (typeof SEVERITIES)[number];

export const ITEM_OUTCOMES = ["pass", "fail", "not-applicable", "not-seen"] as const;
export type ItemOutcome = (typeof ITEM_OUTCOMES)[number];
