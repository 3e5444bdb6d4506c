/** How far a report is. */
export const REPORT_STATES = ["received", "looking", "waiting", "answered", "closed", "reopened"] as const;
export type ReportState = (typeof REPORT_STATES)[number];

export const STATE_WORDS: Record<ReportState, string> = {
  received: "received",
  looking: "looking into it",
  waiting: "waiting for something",
  answered: "answered",
  closed: "closed",
  reopened: "reopened",
};

/** States in which somebody still has to do something. */
export const OPEN_STATES = ["received", "looking", "waiting", "reopened"] as const satisfies readonly ReportState[];

export const isOpen = (state: ReportState): boolean => (OPEN_STATES as readonly ReportState[]).includes(state);

const NEXT: Record<ReportState, readonly ReportState[]> = {
  received: ["looking", "waiting", "answered", "closed"],
  looking: ["waiting", "answered", "closed"],
  waiting: ["looking", "answered", "closed"],
  answered: ["looking", "waiting", "closed", "reopened"],
  closed: ["reopened"],
  reopened: ["looking", "waiting", "answered", "closed"],
};

/** Where a report may go from a state: what was closed is reopened before anything else is done about it. */
export const nextStates = (state: ReportState): readonly ReportState[] => NEXT[state];

/** What may be done about a report. */
export const REPORT_ACTIONS = [
  "setpoint",
  "airflow",
  "diffuser",
  "desk-move",
  "heater-removed",
  "repair",
  "not-changed",
] as const;
export type ReportAction = (typeof REPORT_ACTIONS)[number];

export const ACTION_WORDS: Record<ReportAction, string> = {
  setpoint: "setpoint changed",
  airflow: "airflow changed",
  diffuser: "diffuser turned or shielded",
  "desk-move": "desk moved",
  "heater-removed": "heater taken away",
  repair: "something repaired",
  "not-changed": "nothing changed, and told why",
};
