"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField, type SelectOption } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** Adds who is told of new reports. Works without script. */
export function RecipientForm({ action, hours }: { action: BoundAction; hours: SelectOption[] }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string) => ({
    name,
    defaultValue: failure?.values[name] ?? "",
    error: failure?.fieldErrors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <Field {...of("address")} type="email" label="Mail address" />
      <Field
        {...of("zoneCodes")}
        label="Zones"
        optional
        hint="Their codes, with commas between; empty for all zones."
      />
      <SelectField
        {...of("dailyHour")}
        label="When"
        prompt="At once, those of the same minute together"
        options={hours}
      />
      <FormActions>
        <SubmitButton>Add</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
