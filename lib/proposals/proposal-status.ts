/** Where a proposal stands: the status of its last event. */
export const PROPOSAL_STATUSES = [
  "draft",
  "submitted",
  "approved",
  "declined",
  "sent-back",
  "in-force",
  "held",
  "adopted",
  "rolled-back",
] as const;
export type ProposalStatus = (typeof PROPOSAL_STATUSES)[number];

export const STATUS_WORDS: Record<ProposalStatus, string> = {
  draft: "draft",
  submitted: "submitted",
  approved: "approved",
  declined: "declined",
  "sent-back": "sent back",
  "in-force": "in force",
  held: "held",
  adopted: "adopted",
  "rolled-back": "rolled back",
};

/** What may follow on what. Declined, adopted and rolled back are ends. */
export const NEXT_STATUSES: Record<ProposalStatus, readonly ProposalStatus[]> = {
  draft: ["submitted"],
  submitted: ["approved", "declined", "sent-back"],
  "sent-back": ["submitted"],
  approved: ["in-force", "held"],
  "in-force": ["held", "adopted", "rolled-back"],
  held: ["in-force", "rolled-back"],
  declined: [],
  adopted: [],
  "rolled-back": [],
};

/** Statuses in which the stop rules of a trial are watched: held keeps the setting and goes no further. */
export const isOnTrial = (status: ProposalStatus): boolean => status === "in-force" || status === "held";

/** Statuses in which zones, levers and plan may still be changed. */
export const isOpen = (status: ProposalStatus): boolean => status === "draft" || status === "sent-back";
