"use client";

import { useActionState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** Two readings at the ends of a control; whether it changes the watts follows from them. */
export function ControlForm({ action }: { action: BoundAction }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values: Record<string, string> = failure?.values ?? {};
  const errors = failure?.fieldErrors ?? {};
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      <FieldSet legend="Note what a control changes" inline>
        <Field {...field("name")} label="Control" autoComplete="off" placeholder="speed dial" />
        <NumberField {...field("lowEndW")} label="At its low end" unit="W" />
        <NumberField {...field("highEndW")} label="At its high end" unit="W" />
        <CheckboxField
          name="changesSpeed"
          label="The speed changes"
          defaultChecked={values.changesSpeed !== undefined}
        />
        <Field {...field("controlNote")} label="What was seen" optional autoComplete="off" />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain">Note it</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
