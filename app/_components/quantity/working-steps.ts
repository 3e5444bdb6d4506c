import type { Working } from "@/lib/working/working";

/** One step of the way from a component's working to that of a term deep inside it. */
export type Step = { label: string; working: Working; at: number[] };

/** The steps to the place `at` ("3.0.2": term 3, its term 0, its term 2). Null when there is no such working. */
export function stepsTo(working: Working, at: string | undefined): Step[] | null {
  const steps: Step[] = [{ label: working.result.label, working, at: [] }];
  if (!at) return steps;
  for (const part of at.split(".")) {
    const last = steps.at(-1) as Step;
    const term = /^\d{1,4}$/.test(part) ? last.working.terms[Number(part)] : undefined;
    if (!term?.working) return null;
    steps.push({ label: term.label, working: term.working, at: [...last.at, Number(part)] });
  }
  return steps;
}
