/** A refused form: what was entered, what is wrong by field, and what is wrong with the whole. */
export type FormFailure = {
  ok: false;
  values: Record<string, string>;
  fieldErrors: Record<string, string>;
  formError: string;
};

/** State of a form between posts; null before the first. */
export type FormState = FormFailure | { ok: true } | null;

/**
 * An action for a form with a state. Bind it to its ids on the server and hand it down: bound while a client component
 * renders, it is a new promise at every try, and a form sent without script never gets its answer.
 */
export type BoundAction = (state: FormState, form: FormData) => Promise<FormState>;

/** A field's text; blank when the field is missing or a file. */
export function fieldText(formData: FormData, name: string): string {
  const value = formData.get(name);
  return typeof value === "string" ? value : "";
}

/**
 * What was entered, to show again: texts only, without passwords and the framework's own fields. Boxes of one name
 * come as one text joined by commas.
 */
export function postedValues(formData: FormData): Record<string, string> {
  const values: Record<string, string> = {};
  for (const [name, value] of formData) {
    if (typeof value !== "string" || name.startsWith("$ACTION") || /password/i.test(name)) continue;
    const present = values[name];
    values[name] = present === undefined ? value : `${present},${value}`;
  }
  return values;
}
