/** What people do at a desk, with its metabolic rate [met] as a range. */
export type Activity = { id: string; label: string; met: number; lowMet: number; highMet: number };

export const ACTIVITY_SOURCE =
  "ASHRAE 55, typical metabolic rates, as public implementations have them; ranges: a tenth either way (common practice, no source)";

const activity = (id: string, label: string, met: number): Activity => ({
  id,
  label,
  met,
  lowMet: Math.max(1, met - 0.1),
  highMet: met + 0.1,
});

export const ACTIVITIES: readonly Activity[] = [
  activity("reading", "Reading or writing, seated", 1),
  activity("typing", "Typing, seated", 1.1),
  activity("filing-seated", "Filing, seated", 1.2),
  activity("filing-standing", "Filing, standing", 1.4),
  activity("walking", "Walking about", 1.7),
];
