"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { FormState } from "@/app/_server/form-state";
import { BuildingFields } from "./building-fields";

type Props = {
  action: (state: FormState, form: FormData) => Promise<FormState>;
  values: Record<string, string>;
  timeZones: readonly string[];
  submitLabel: string;
};

/** The form that sets up or changes a building. Works without script. */
export function BuildingForm({ action, values, timeZones, submitLabel }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? (
        <Notice kind="done" title="Saved">
          <p>Figures that depend on this are worked out anew when you open them.</p>
        </Notice>
      ) : null}
      <BuildingFields values={failure?.values ?? values} errors={failure?.fieldErrors ?? {}} timeZones={timeZones} />
      <FormActions>
        <SubmitButton>{submitLabel}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
