import type { PastReports } from "@/lib/services/comfort-reports/import-past";

/** What the page holds between posts: the table as text, what was typed, and what became of the rows. */
export type PastState = {
  table: string;
  values: Record<string, string>;
  read: PastReports | null;
  taken: boolean;
  formError: string;
} | null;

export type PastAction = (state: PastState, form: FormData) => Promise<PastState>;
