"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** Renames a profile in use, or takes it out of use. */
export function ProfileForm({ action, id, name }: { action: BoundAction; id: number; name: string }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} />
      <FieldSet legend={`Profile ${name}`} legendHidden inline>
        <Field
          key={name}
          id={`name-${id}`}
          name="name"
          label="Name"
          maxLength={120}
          defaultValue={failure?.values.name ?? name}
          error={failure?.fieldErrors.name}
        />
        <SubmitButton name="step" value="rename" kind="plain">
          Rename
        </SubmitButton>
        <SubmitButton name="step" value="retire" kind="plain" pendingLabel="Retiring">
          Retire
        </SubmitButton>
      </FieldSet>
    </FormStack>
  );
}
