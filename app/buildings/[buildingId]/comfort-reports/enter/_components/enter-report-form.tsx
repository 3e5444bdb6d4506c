"use client";

import { useActionState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { VOTE_LABEL } from "@/lib/comfort-reports/thermal-sensation";
import type { Places } from "@/lib/services/zones/places";

const WAYS = [
  { value: "phone", label: "By phone" },
  { value: "mail", label: "By mail" },
  { value: "in-person", label: "In person" },
];
const WISHES = [
  { value: "warmer", label: "Warmer" },
  { value: "no-change", label: "No change" },
  { value: "cooler", label: "Cooler" },
];

type Props = { action: BoundAction; places: Places; today: string };

/** Who entered it is kept; who said it is not asked. Works without script. */
export function EnterReportForm({ action, places, today }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string, first = "") => ({
    name,
    defaultValue: failure?.values[name] ?? first,
    error: failure?.fieldErrors[name],
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="The report is on record" /> : null}
      <SelectField {...of("origin", "phone")} label="How it came in" options={WAYS} />
      <SelectField
        {...of("zoneCode")}
        label="Zone"
        prompt="Choose a zone"
        hint="May stay open where a desk is chosen."
        options={places.zones.map(({ code, label }) => ({ value: code, label }))}
      />
      <SelectField
        {...of("deskCode")}
        label="Desk"
        optional
        prompt="Not said"
        options={places.desks.map(({ code, zoneCode }) => ({ value: code, label: `${code} (zone ${zoneCode})` }))}
      />
      <FieldSet legend="When it was felt" id="reportedAt" error={failure?.fieldErrors.reportedAt} inline>
        <Field {...of("date", today)} label="Date" type="date" />
        <Field {...of("time")} label="Time" type="time" optional hint="Left open: now, or noon of an earlier day." />
      </FieldSet>
      <SelectField
        {...of("thermalSensation")}
        label="Felt"
        prompt="Choose"
        options={VOTE_LABEL.map(({ vote, label }) => ({ value: String(vote), label }))}
      />
      <SelectField {...of("preference")} label="Would like it" prompt="Choose" options={WISHES} />
      <CheckboxField
        name="draught"
        label="There was a draught"
        defaultChecked={failure?.values.draught !== undefined}
      />
      <TextAreaField
        {...of("note")}
        label="What was said"
        optional
        hint="Leave out names, health and personal details."
      />
      <FormActions>
        <SubmitButton>Put it on record</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
