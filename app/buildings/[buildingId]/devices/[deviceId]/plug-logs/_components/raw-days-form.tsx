"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** Days after which the raw readings of every plug log of the building are deleted. */
export function RawDaysForm({ action, days }: { action: BoundAction; days: number }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state && !state.ok ? state : null;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Saved" /> : null}
      <NumberField
        name="plugLogRawDays"
        label="Delete raw readings after"
        unit="days"
        hint="For all plug logs of this building, reviewed or not. A review deletes them at once; the figures stay."
        defaultValue={failure?.values.plugLogRawDays ?? String(days)}
        error={failure?.fieldErrors.plugLogRawDays}
      />
      <FormActions>
        <SubmitButton kind="plain">Save</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
