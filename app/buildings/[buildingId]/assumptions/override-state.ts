import type { FormFailure } from "@/app/_server/form-state";

/** What a value would make of the cost, in words of figures. */
export type EffectRow = { key: string; label: string; before: string; after: string; change: string };
export type ShownEffect = { rows: EffectRow[]; sentence: string };

/** State of an assumption's form: refused, saved, or shown with its effect and nothing saved. */
export type OverrideState =
  | FormFailure
  | { ok: true }
  | { ok: true; values: Record<string, string>; effect: ShownEffect }
  | null;

export type OverrideAction = (state: OverrideState, form: FormData) => Promise<OverrideState>;
