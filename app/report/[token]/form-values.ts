import { checkedOf, choiceOf, numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { FormFailure } from "@/app/_server/form-state";
import type { BodyPart, SinceWhen } from "@/lib/comfort-reports/answers";
import type { ComfortReportInput } from "@/lib/services/comfort-reports/report-input";
import type { Messages } from "../messages/messages";

/** The posted form as the use-case takes it. */
export function reportFromForm(values: PostedValues): ComfortReportInput {
  return {
    thermalSensation: numberOf(values, "thermalSensation") ?? Number.NaN,
    preference: choiceOf(values, "preference"),
    heaterInUse: checkedOf(values, "heaterInUse"),
    fanInUse: checkedOf(values, "fanInUse"),
    draught: checkedOf(values, "draught"),
    sun: checkedOf(values, "sun"),
    dryAir: checkedOf(values, "dryAir"),
    sinceWhen: choiceOf<SinceWhen>(values, "sinceWhen") || null,
    bodyParts: textOf(values, "bodyParts").split(",").filter(Boolean) as BodyPart[],
    clothing: textOf(values, "clothing") || null,
    activity: textOf(values, "activity") || null,
    note: textOf(values, "note"),
    replyAddress: textOf(values, "replyAddress") || null,
    language: textOf(values, "language") || "en",
    submissionId: textOf(values, "submissionId") || null,
  };
}

/** A refusal in the occupant's language: by its fields, else that something went wrong. */
export function failureInWords(failure: FormFailure, { errors }: Messages): FormFailure {
  const fields = Object.keys(failure.fieldErrors).map((path) => path.split(".")[0] ?? path);
  const worded = fields.map((field) => [field, field in errors ? errors[field as keyof typeof errors] : errors.other]);
  return {
    ...failure,
    fieldErrors: Object.fromEntries(worded),
    formError: fields.length > 0 ? errors.lookAgain : errors.unexpected,
  };
}
