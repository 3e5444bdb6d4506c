import type { OpenRange80 } from "@/lib/finance/project-ranges";
import { type CaseValue, range, text } from "../case-document";

/** A range of years some of whose ends may never come. */
export function openYears({ p10, p50, p90 }: OpenRange80): CaseValue {
  if (p10 === null || p50 === null) return text("not paid back in half of the draws");
  if (p90 !== null) return range({ p10, p50, p90 }, "years");
  return text(`${p10.toFixed(1)} years or more, most likely ${p50.toFixed(1)}; not paid back in one draw of ten`);
}
