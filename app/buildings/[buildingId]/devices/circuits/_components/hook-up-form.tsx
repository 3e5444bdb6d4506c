"use client";

import { useActionState } from "react";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import { HookUpFields } from "./hook-up-fields";

type Props = {
  action: BoundAction;
  values: Record<string, string>;
  circuits: readonly { id: number; name: string; breakerRatingA: number | null }[];
};

/** On which circuit and outlet a device hangs. */
export function HookUpForm({ action, values: saved, circuits }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? saved;
  const errors = failure?.fieldErrors ?? {};
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      {state?.ok ? <Notice kind="done" title="Circuit saved" /> : null}
      <FieldSet legend="Circuit and outlet" legendHidden inline>
        <SelectField
          name="circuitId"
          label="Circuit"
          prompt="Not known"
          defaultValue={values.circuitId ?? ""}
          error={errors.circuitId}
          options={circuits.map(({ id, name, breakerRatingA }) => ({
            value: String(id),
            label: breakerRatingA === null ? name : `${name}, ${breakerRatingA} A`,
          }))}
        />
        <HookUpFields values={values} errors={errors} />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain">Save the circuit</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
