"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** Address of the receiver; a new secret is made with it. Works without script. */
export function WebhookForm({ action }: { action: BoundAction }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <Field
        name="url"
        type="url"
        label="Address that takes new reports"
        hint="Beginning with https://. A new secret is made; reports from now on are posted, those that fail are tried again."
        defaultValue={failure?.values.url ?? ""}
        error={failure?.fieldErrors.url}
      />
      <FormActions>
        <SubmitButton>Set it</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
