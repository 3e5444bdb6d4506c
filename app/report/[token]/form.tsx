"use client";

import { useActionState } from "react";
import { CheckboxField, RadioField } from "@/app/_components/ui/choice-field";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import { VOTE_LABEL } from "@/lib/comfort-reports/thermal-sensation";
import { fileReportAction } from "./actions";

const PREFERENCES = [
  { value: "warmer", label: "Warmer" },
  { value: "no-change", label: "No change" },
  { value: "cooler", label: "Cooler" },
];

/** Vote and preference, then what may be added. Two taps and the button; works without script. */
export function ReportForm({ token, submissionId }: { token: string; submissionId: string }) {
  const [state, action] = useActionState(fileReportAction.bind(null, token), null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? {};
  return (
    <FormStack action={action}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <input type="hidden" name="submissionId" value={values.submissionId ?? submissionId} />
      <FieldSet legend="Right now I feel" id="thermalSensation" error={failure?.fieldErrors.thermalSensation}>
        {VOTE_LABEL.map(({ vote, label }) => (
          <RadioField
            key={vote}
            id={`thermalSensation-${vote}`}
            name="thermalSensation"
            value={String(vote)}
            label={label}
            defaultChecked={values.thermalSensation === String(vote)}
          />
        ))}
      </FieldSet>
      <FieldSet legend="I would like it" id="preference" error={failure?.fieldErrors.preference}>
        {PREFERENCES.map(({ value, label }) => (
          <RadioField
            key={value}
            id={`preference-${value}`}
            name="preference"
            value={value}
            label={label}
            defaultChecked={values.preference === value}
          />
        ))}
      </FieldSet>
      <Disclosure summary="Add more, if you like" open={failure !== undefined}>
        <CheckboxField name="heaterInUse" label="I use a heater" defaultChecked={values.heaterInUse !== undefined} />
        <CheckboxField name="fanInUse" label="I use a fan" defaultChecked={values.fanInUse !== undefined} />
        <CheckboxField name="draught" label="There is a draught" defaultChecked={values.draught !== undefined} />
        <TextAreaField
          name="note"
          label="Anything else"
          optional
          rows={3}
          maxLength={500}
          defaultValue={values.note ?? ""}
          hint="Please leave out health and personal details: facilities staff read this."
          error={failure?.fieldErrors.note}
        />
      </Disclosure>
      <FormActions>
        <SubmitButton pendingLabel="Sending">Send</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
