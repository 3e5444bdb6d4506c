"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import { counted } from "@/lib/units/counted";

type Props = { action: BoundAction; missing: number; choice: Readonly<Record<string, string>> };

/** Makes the links without which a desk or zone has no label. */
export function MissingLinksForm({ action, missing, choice }: Props) {
  const [state, formAction] = useActionState(action, null);
  return (
    <FormStack action={formAction}>
      {state && !state.ok ? <FormMessage message={state.formError} /> : null}
      {Object.entries(choice).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <p>{counted(missing, "place")} without a link, and so without a label.</p>
      <FormActions>
        <SubmitButton kind="plain" pendingLabel="Making links">
          Make the missing links
        </SubmitButton>
      </FormActions>
    </FormStack>
  );
}
