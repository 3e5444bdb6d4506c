import { numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { FileAnswers, MappingInput, PointChoice } from "@/lib/services/trend-imports/run-input";
import type { PointKind } from "@/lib/trends/point-kind";
import { SKIP } from "./view-model";

/** Posted table rows to choices by point name; a row without a choice is left for the use-case to ask about. */
export function mappingFromForm(values: PostedValues): MappingInput {
  const points: Record<string, PointChoice> = {};
  const count = numberOf(values, "pointCount") ?? 0;
  for (let i = 0; i < count; i++) {
    const what = textOf(values, `what.${i}`);
    const name = values[`name.${i}`] ?? "";
    if (what === SKIP) points[name] = { skip: true };
    else if (what)
      points[name] = {
        skip: false,
        kind: what as PointKind,
        zoneId: numberOf(values, `zone.${i}`),
        unit: textOf(values, `unit.${i}`) || null,
      };
  }
  const answersByRun: Record<string, FileAnswers> = {};
  for (const [field, value] of Object.entries(values)) {
    const match = /^answer\.(\d+)\.([a-z-]+)$/.exec(field);
    if (!match || value === "") continue;
    const [, runId, what] = match as unknown as [string, string, string];
    answersByRun[runId] = { ...answersByRun[runId], ...answerOf(what, value) };
  }
  return { points, answersByRun };
}

function answerOf(what: string, value: string): FileAnswers {
  if (what === "date-order") return { dateOrder: value as FileAnswers["dateOrder"] };
  if (what === "clock") return { clock: value as FileAnswers["clock"] };
  if (what === "value-column") return { valueColumn: value };
  if (what === "flag-column") return { flagColumn: { good: value.split(",").map((each) => each.trim()) } };
  return {};
}

/** Errors by point name, as the use-case gives them, to errors by field of the form. */
export function fieldErrorsOfForm(errors: Record<string, string>, values: PostedValues): Record<string, string> {
  const indexOf = new Map<string, string>();
  for (const [field, name] of Object.entries(values)) if (field.startsWith("name.")) indexOf.set(name, field.slice(5));
  return Object.fromEntries(
    Object.entries(errors).map(([path, message]) => {
      if (path.startsWith("answers.")) return [`answer.${path.slice(8)}`, message];
      const index = path.startsWith("points.") ? indexOf.get(path.slice(7)) : undefined;
      return [index === undefined ? path : `what.${index}`, message];
    }),
  );
}
