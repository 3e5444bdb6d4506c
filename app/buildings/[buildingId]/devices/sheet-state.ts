import type { FormFailure } from "@/app/_server/form-state";

/** State of a measurement sheet: refused, saved, or shown again with a setting more or less and nothing saved. */
export type SheetState = FormFailure | { ok: true } | { ok: true; values: Record<string, string> } | null;

/** Bind it to its ids on the server and hand it down. */
export type SheetAction = (state: SheetState, form: FormData) => Promise<SheetState>;
