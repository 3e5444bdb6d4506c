"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";

type Props = { action: BoundAction };

/** A named engineer's check of the ventilation, without which a lower minimum is not approved. */
export function VentilationForm({ action }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string) => ({ name, defaultValue: failure?.values[name] ?? "", error: failure?.fieldErrors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <FieldSet legend="Ventilation check" hint="By a licensed engineer, zone by zone, under the code that applies.">
        <Field {...of("engineer")} label="Engineer" />
        <Field {...of("onDate")} label="Checked on" unit="YYYY-MM-DD" />
        <TextAreaField {...of("note")} label="By which code, to which rates" rows={2} />
      </FieldSet>
      <FormActions>
        <SubmitButton>Enter the check</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
