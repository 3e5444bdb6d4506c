"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type PlanProps = { action: BoundAction; values: Readonly<Record<string, string>>; hasSwitchback: boolean };

/** Windows before and after, set before anyone waits. Works without script. */
export function VerificationPlanForm({ action, values, hasSwitchback }: PlanProps) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string) => ({
    name,
    defaultValue: failure?.values[name] ?? values[name] ?? "",
    error: failure?.fieldErrors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <FieldSet legend="Windows" inline>
        <SelectField
          {...of("method")}
          label="Method"
          options={[
            { value: "before-after", label: "before and after, on days of like weather" },
            ...(hasSwitchback ? [{ value: "switchback", label: "alternate weeks, paired" }] : []),
          ]}
        />
        <Field {...of("beforeFrom")} label="Before, from" unit="YYYY-MM-DD" />
        <Field {...of("beforeTo")} label="to" unit="YYYY-MM-DD" />
        <Field {...of("afterFrom")} label="After, from" unit="YYYY-MM-DD" />
        <Field {...of("afterTo")} label="to" unit="YYYY-MM-DD" />
      </FieldSet>
      <FormActions>
        <SubmitButton>Set the windows</SubmitButton>
      </FormActions>
    </FormStack>
  );
}

/** Works out what the data say now, and keeps it. */
export function VerifyForm({ action }: { action: BoundAction }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <FormActions>
        <SubmitButton pendingLabel="Working it out">Work out what the data say</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
