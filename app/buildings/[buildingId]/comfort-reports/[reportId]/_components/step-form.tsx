"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import {
  ACTION_WORDS,
  nextStates,
  REPORT_ACTIONS,
  type ReportState,
  STATE_WORDS,
} from "@/lib/comfort-reports/report-state";

type Props = { action: BoundAction; state: ReportState; answerHint: string };

/** The next step with a report. Works without script. */
export function StepForm({ action, state: present, answerHint }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string) => ({ name, defaultValue: failure?.values[name] ?? "", error: failure?.fieldErrors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Kept with your name and the time" /> : null}
      <SelectField
        {...of("state")}
        label="State"
        prompt={`As it is: ${STATE_WORDS[present]}`}
        options={nextStates(present).map((value) => ({ value, label: STATE_WORDS[value] }))}
      />
      <SelectField
        {...of("action")}
        label="What was done"
        optional
        prompt="Nothing yet"
        options={REPORT_ACTIONS.map((value) => ({ value, label: ACTION_WORDS[value] }))}
      />
      <Field {...of("actedOn")} label="On" type="date" optional hint="Left open: today." />
      <TextAreaField
        {...of("note")}
        label="What was changed"
        optional
        hint="For facilities: from what to what, such as the setpoint before and after."
        maxLength={1000}
      />
      <TextAreaField {...of("answer")} label="Answer to the occupant" optional hint={answerHint} maxLength={1000} />
      <FormActions>
        <SubmitButton>Keep it</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
