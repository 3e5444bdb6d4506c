"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** Sends one mail and says what the server made of it. Works without script. */
export function TestMailForm({ action }: { action: BoundAction }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="The server has taken the test mail" /> : null}
      <Field
        name="to"
        type="email"
        label="Send a test mail to"
        defaultValue={failure?.values.to ?? ""}
        error={failure?.fieldErrors.to}
      />
      <FormActions>
        <SubmitButton pendingLabel="Sending">Send a test mail</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
