"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type Props = { action: BoundAction; zones: readonly { code: string; name: string }[] };

export function AddDeskForm({ action, zones }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="The desk is added" /> : null}
      <FieldSet legend="Desk" legendHidden inline>
        <Field
          name="deskCode"
          label="Desk code"
          autoComplete="off"
          defaultValue={failure?.values.deskCode ?? ""}
          error={failure?.fieldErrors.deskCode}
        />
        <SelectField
          name="zoneCode"
          label="Stands in zone"
          prompt="Choose a zone"
          defaultValue={failure?.values.zoneCode ?? ""}
          error={failure?.fieldErrors.zoneCode}
          options={zones.map(({ code, name }) => ({ value: code, label: name ? `${code}, ${name}` : code }))}
        />
      </FieldSet>
      <FormActions>
        <SubmitButton>Add the desk</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
