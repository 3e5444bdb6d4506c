/** How much a finding matters: a note informs, a caution asks for a look, `disqualifies` stops a result. */
export type Severity = "note" | "caution" | "disqualifies";

/** Facts behind a finding: counts, hours, line numbers, names. Units stand in the key (`gapHours`). */
export type Evidence = Record<string, string | number | boolean | readonly (string | number)[] | null>;

/** Something a reader or an analysis noticed about data; the sentence for `code` stands in the subject's `findings.ts`. */
export type Finding<Code extends string = string> = {
  code: Code;
  severity: Severity;
  evidence: Evidence;
};
