"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import type { ReportRetention } from "@/lib/services/comfort-reports/retention";

/** Days until addresses and notes are deleted. Works without script. */
export function RetentionForm({ action, retention }: { action: BoundAction; retention: ReportRetention }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: keyof ReportRetention) => ({
    name,
    defaultValue: failure?.values[name] ?? String(retention[name]),
    error: failure?.fieldErrors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Kept; what is past these days is deleted" /> : null}
      <NumberField {...of("replyAddressDays")} label="Reply address, after a report is closed" unit="days" />
      <NumberField
        {...of("noteDays")}
        label="Note, after a report is made"
        unit="days"
        hint="Also the longest for a reply address of a report that nobody closes, and for a report kept aside."
      />
      <NumberField
        {...of("deskDays")}
        label="Desk, after a report is made"
        unit="days"
        hint="From then on the zone alone is known. With a seating plan a desk says who sat there."
      />
      <FormActions>
        <SubmitButton>Save</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
