"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type Props = { action: BoundAction; items: readonly { id: number; fault: string }[]; today: string };

/** Says of an open item that it was put right. */
export function CorrectItemForm({ action, items, today }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values: Record<string, string> = failure?.values ?? { correctedOn: today };
  const errors = failure?.fieldErrors ?? {};
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      <FieldSet legend="Put right" inline>
        <SelectField
          name="itemRowId"
          label="Item"
          defaultValue={values.itemRowId ?? String(items[0]?.id ?? "")}
          options={items.map(({ id, fault }) => ({ value: String(id), label: fault }))}
        />
        <Field
          name="correctedOn"
          label="Put right on"
          type="date"
          defaultValue={values.correctedOn ?? ""}
          error={errors.correctedOn}
        />
        <Field
          name="correctionNote"
          label="How"
          optional
          autoComplete="off"
          defaultValue={values.correctionNote ?? ""}
          error={errors.correctionNote}
        />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain">It was put right</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
