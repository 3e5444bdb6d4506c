import { loadCheckValues } from "./check-values";

/** Wall-clock readings around a change of clocks, in the order that they happened; `folds` is 1 on a second pass. */
export type DstCase = { timeZone: string; stamps: string[]; folds: number[]; skipped: string[] };

export const dstCases = () => loadCheckValues<DstCase>("time/dst-cases").cases;

/** `2025-03-09 02:15` as seconds of the wall clock. */
export const localSecondsOf = (stamp: string): number => Date.parse(`${stamp.replace(" ", "T")}:00Z`) / 1000;
