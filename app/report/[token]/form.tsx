"use client";

import { useActionState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import { VOTE_LABEL } from "@/lib/comfort-reports/thermal-sensation";
import styles from "./_components/report.module.css";
import { TapChoice } from "./_components/tap-choice";

const PREFERENCES = [
  { value: "warmer", label: "Warmer" },
  { value: "no-change", label: "No change" },
  { value: "cooler", label: "Cooler" },
];

const signed = (vote: number): string => (vote > 0 ? `+${vote}` : vote < 0 ? `\u2212${-vote}` : "0");

/** Vote and preference, then what may be added. Two taps and the button; works without script. */
export function ReportForm({ action, submissionId }: { action: BoundAction; submissionId: string }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? {};
  return (
    <FormStack action={formAction} className={styles.form}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <input type="hidden" name="submissionId" value={values.submissionId ?? submissionId} />
      <TapChoice
        name="thermalSensation"
        legend="Right now I feel"
        options={VOTE_LABEL.map(({ vote, label }) => ({ value: String(vote), label, sign: signed(vote) }))}
        chosen={values.thermalSensation}
        error={failure?.fieldErrors.thermalSensation}
      />
      <TapChoice
        name="preference"
        legend="I would like it"
        options={PREFERENCES}
        chosen={values.preference}
        error={failure?.fieldErrors.preference}
        inRow
      />
      <Disclosure summary="Add more, if you like" open={failure !== undefined}>
        <CheckboxField name="heaterInUse" label="I use a heater" defaultChecked={values.heaterInUse !== undefined} />
        <CheckboxField name="fanInUse" label="I use a fan" defaultChecked={values.fanInUse !== undefined} />
        <CheckboxField name="draught" label="There is a draught" defaultChecked={values.draught !== undefined} />
        <SelectField
          name="clothing"
          label="What I wear comes nearest to"
          optional
          prompt="Not said"
          options={ENSEMBLES.map(({ id, label }) => ({ value: id, label }))}
          defaultValue={values.clothing ?? ""}
          error={failure?.fieldErrors.clothing}
        />
        <SelectField
          name="activity"
          label="In the last half hour I was mostly"
          optional
          prompt="Not said"
          options={ACTIVITIES.map(({ id, label }) => ({ value: id, label }))}
          defaultValue={values.activity ?? ""}
          error={failure?.fieldErrors.activity}
        />
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
      <div className={styles.send}>
        <SubmitButton pendingLabel="Sending">Send</SubmitButton>
      </div>
    </FormStack>
  );
}
