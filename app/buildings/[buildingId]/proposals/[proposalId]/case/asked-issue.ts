import type { Paper } from "./markup/case-style";

type Query = Readonly<Record<string, string | string[] | undefined>>;

/** Which issue, and on which paper: the newest on A4 unless asked otherwise. */
export function askedIssue(query: Query): { issue: number | undefined; paper: Paper } {
  const issue = Number(query.issue);
  return {
    issue: Number.isInteger(issue) && issue > 0 ? issue : undefined,
    paper: query.paper === "letter" ? "letter" : "a4",
  };
}
