"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type Props = { action: BoundAction; label: string; kind?: "primary" | "plain" };

/** Starts or ends a walk. */
export function WalkForm({ action, label, kind = "primary" }: Props) {
  const [state, formAction] = useActionState(action, null);
  return (
    <FormStack action={formAction}>
      {state && !state.ok ? <FormMessage message={state.formError} /> : null}
      <FormActions>
        <SubmitButton kind={kind}>{label}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
