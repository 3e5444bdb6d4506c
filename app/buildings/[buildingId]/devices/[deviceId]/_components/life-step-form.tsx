"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import { type DeviceStatus, statusLabel } from "@/lib/electrical/device-status";

type Props = { action: BoundAction; next: readonly DeviceStatus[]; today: string };

/** The next step of a device's life. */
export function LifeStepForm({ action, next, today }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? { onDate: today };
  const errors = failure?.fieldErrors ?? {};
  const field = (name: string) => ({
    name,
    defaultValue: (values as Record<string, string>)[name] ?? "",
    error: errors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      {state?.ok ? <Notice kind="done" title="Step kept" /> : null}
      <FieldSet legend="Next step" inline>
        <SelectField
          {...field("status")}
          label="Becomes"
          prompt="Choose a step"
          options={next.map((status) => ({ value: status, label: statusLabel(status) }))}
        />
        <Field {...field("onDate")} label="On" type="date" />
        <Field
          {...field("stepNote")}
          label="Note on the step"
          optional
          autoComplete="off"
          hint="No ground, nothing about a person: a reason to stay is kept outside of this register."
        />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain">Keep the step</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
