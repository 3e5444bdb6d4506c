"use client";

import { type ReactNode, useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type Props = {
  action: BoundAction;
  label: string;
  pendingLabel: string;
  /** Stands beside the button: the way back. */
  beside?: ReactNode;
};

/** A form that asks nothing: one button, and what was refused above it. */
export function OneButtonForm({ action, label, pendingLabel, beside }: Props) {
  const [state, formAction] = useActionState(action, null);
  return (
    <FormStack action={formAction}>
      {state && !state.ok ? <FormMessage message={state.formError} /> : null}
      <FormActions>
        <SubmitButton pendingLabel={pendingLabel}>{label}</SubmitButton>
        {beside}
      </FormActions>
    </FormStack>
  );
}
