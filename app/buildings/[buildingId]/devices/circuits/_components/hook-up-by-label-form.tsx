"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import { HookUpFields } from "./hook-up-fields";

/** Hangs a device on this circuit by the name on its sticker. */
export function HookUpByLabelForm({ action }: { action: BoundAction }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? { circuitMapping: "assumed", outletKind: "unknown" };
  const errors = failure?.fieldErrors ?? {};
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      <FieldSet legend="Hang a device on it" inline>
        <Field
          name="deviceLabel"
          label="Its sticker"
          defaultValue={values.deviceLabel ?? ""}
          error={errors.deviceLabel}
          autoComplete="off"
        />
        <HookUpFields values={values} errors={errors} />
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain">Hang it on</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
