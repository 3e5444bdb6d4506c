"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import type { Places } from "@/lib/services/zones/places";

/** Chooses a zone, and a desk where one is meant. */
export function IssueLinkForm({ action, places }: { action: BoundAction; places: Places }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="The link is in the list below" /> : null}
      <SelectField
        name="zoneId"
        label="Zone"
        prompt="Choose a zone"
        defaultValue={failure?.values.zoneId ?? ""}
        error={failure?.fieldErrors.zoneId}
        options={places.zones.map((zone) => ({ value: String(zone.id), label: zone.label }))}
      />
      <SelectField
        name="deskId"
        label="Desk"
        optional
        prompt="The whole zone"
        defaultValue={failure?.values.deskId ?? ""}
        error={failure?.fieldErrors.deskId}
        options={places.desks.map((desk) => ({
          value: String(desk.id),
          label: `${desk.code} (zone ${desk.zoneCode})`,
        }))}
      />
      <FormActions>
        <SubmitButton pendingLabel="Making the link">Make the link</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
