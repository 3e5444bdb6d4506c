"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type Props = {
  action: BoundAction;
  assumptionId: string;
  unit: string;
  value: { value: number; low: number; high: number };
};

/** A building's own value with its range and the reason. */
export function OverrideForm({ action, assumptionId, unit, value }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const field = (name: "value" | "low" | "high") => ({
    name,
    id: `${assumptionId}-${name}`,
    defaultValue: failure?.values[name] ?? String(value[name]),
    error: failure?.fieldErrors[name],
    unit,
  });
  const errors = Object.fromEntries(
    Object.entries(failure?.fieldErrors ?? {}).map(([name, message]) => [`${assumptionId}-${name}`, message]),
  );
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      <FieldSet legend="Your own value" inline>
        <NumberField {...field("value")} label="Value" />
        <NumberField {...field("low")} label="Lowest plausible" />
        <NumberField {...field("high")} label="Highest plausible" />
      </FieldSet>
      <Field
        name="reason"
        id={`${assumptionId}-reason`}
        label="Reason"
        hint="A measurement, a nameplate, a contract."
        defaultValue={failure?.values.reason ?? ""}
        error={failure?.fieldErrors.reason}
      />
      <FormActions>
        <SubmitButton>Use this value</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
