import { NO_ROWS, type TrendDetected, type TrendFileResult, type TrendFinding, type TrendRefusal } from "./trend-file";

/** Result of a file of which nothing can be stored. */
export function refusedResult(
  file: string,
  refusal: TrendRefusal,
  detected: TrendDetected = {},
  findings: TrendFinding[] = [],
): TrendFileResult {
  return {
    file,
    outcome: "refuse",
    detected,
    points: [],
    instantsKnown: true,
    ask: [],
    findings,
    refusal,
    rows: { ...NO_ROWS },
    rowNotes: [],
  };
}
