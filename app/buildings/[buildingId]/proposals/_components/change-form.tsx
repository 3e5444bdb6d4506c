"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField, type SelectOption } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type Props = {
  action: BoundAction;
  sentence: string;
  move: { zoneId: number; setting: string; atUtcSeconds: number };
  proposals: readonly SelectOption[];
};

/** Confirms or rejects a change that the trends show. Works without script. */
export function ChangeForm({ action, sentence, move, proposals }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const key = `${move.zoneId}-${move.setting}-${move.atUtcSeconds}`;
  const of = (name: string) => ({
    name,
    id: `${name}-${key}`,
    defaultValue: failure?.values[name] ?? "",
    error: failure?.fieldErrors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <input type="hidden" name="zoneId" value={move.zoneId} />
      <input type="hidden" name="setting" value={move.setting} />
      <input type="hidden" name="atUtcSeconds" value={move.atUtcSeconds} />
      <FieldSet legend={sentence} inline>
        <SelectField
          {...of("decision")}
          label="Was it changed"
          prompt="Choose"
          options={[
            { value: "confirmed", label: "yes, confirm" },
            { value: "rejected", label: "no, a fault of the data" },
          ]}
        />
        <SelectField {...of("proposalId")} label="By the proposal" prompt="none" options={proposals} optional />
        <Field {...of("changedBy")} label="Changed by" optional />
        <Field {...of("reason")} label="Why" optional />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain">Enter</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
