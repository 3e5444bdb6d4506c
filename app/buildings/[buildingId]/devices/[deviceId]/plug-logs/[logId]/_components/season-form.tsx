"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

/** The days that the logged ones stand for. */
export function SeasonForm({ action, stands }: { action: BoundAction; stands: { from: string; to: string } }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state && !state.ok ? state : null;
  const field = (name: "standsFrom" | "standsTo", offered: string) => ({
    name,
    type: "date",
    defaultValue: failure?.values[name] ?? offered,
    error: failure?.fieldErrors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <FieldSet
        legend="The logged days stand for"
        hint="One season of at most seven months: a log of summer says nothing of winter. Occupied and other days are taken apart."
        inline
      >
        <Field {...field("standsFrom", stands.from)} label="From" />
        <Field {...field("standsTo", stands.to)} label="To, this day included" />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain" pendingLabel="Working out">
          Work out the season
        </SubmitButton>
      </FormActions>
    </FormStack>
  );
}
