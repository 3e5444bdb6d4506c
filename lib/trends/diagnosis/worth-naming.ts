/** Least time that a sign must have lasted in a record to be named: 5 h and a tenth of the hours it could be seen in. Judgement, no source. */
const LEAST_HOURS = 5;
const LEAST_FRACTION = 0.1;

export const isWorthNaming = (hours: number, ofHours: number): boolean =>
  hours >= LEAST_HOURS && hours >= LEAST_FRACTION * ofHours;
