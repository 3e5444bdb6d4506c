"use client";

import { useActionState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import { BODY_PARTS, SINCE_WHEN } from "@/lib/comfort-reports/answers";
import { VOTE_LABEL } from "@/lib/comfort-reports/thermal-sensation";
import type { FormMessages } from "../messages/messages";
import { ClothingChoice } from "./_components/clothing-choice";
import styles from "./_components/report.module.css";
import { TapChoice } from "./_components/tap-choice";

const AROUND = ["draught", "sun", "dryAir", "heaterInUse", "fanInUse"] as const;

const signed = (vote: number): string => (vote > 0 ? `+${vote}` : vote < 0 ? `\u2212${-vote}` : "0");

type Props = { action: BoundAction; submissionId: string; messages: FormMessages };

/** Vote and preference, then what may be added. Two taps and the button; works without script. */
export function ReportForm({ action, submissionId, messages }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? {};
  const errors = failure?.fieldErrors ?? {};
  const parts = (values.bodyParts ?? "").split(",");
  const inAddition = (label: string) => `${label} (${messages.optional})`;
  return (
    <FormStack action={formAction} className={styles.form}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <input type="hidden" name="submissionId" value={values.submissionId ?? submissionId} />
      <input type="hidden" name="language" value={messages.tag} />
      <TapChoice
        name="thermalSensation"
        legend={messages.feel}
        options={VOTE_LABEL.map(({ vote }) => ({
          value: String(vote),
          label: messages.scale[String(vote) as keyof FormMessages["scale"]],
          sign: signed(vote),
        }))}
        chosen={values.thermalSensation}
        error={errors.thermalSensation}
      />
      <TapChoice
        name="preference"
        legend={messages.wish}
        options={(["warmer", "no-change", "cooler"] as const).map((value) => ({
          value,
          label: messages.preferences[value],
        }))}
        chosen={values.preference}
        error={errors.preference}
        inRow
      />
      <Disclosure summary={messages.more} open={failure !== undefined}>
        <SelectField
          name="sinceWhen"
          label={inAddition(messages.since)}
          prompt={messages.notSaid}
          options={SINCE_WHEN.map((value) => ({ value, label: messages.sinceWhen[value] }))}
          defaultValue={values.sinceWhen ?? ""}
          error={errors.sinceWhen}
        />
        <FieldSet legend={messages.where} id="bodyParts" error={errors.bodyParts}>
          {BODY_PARTS.map((part) => (
            <CheckboxField
              key={part}
              id={`bodyParts-${part}`}
              name="bodyParts"
              value={part}
              label={messages.bodyParts[part]}
              defaultChecked={parts.includes(part)}
            />
          ))}
        </FieldSet>
        <FieldSet legend={messages.around}>
          {AROUND.map((name) => (
            <CheckboxField
              key={name}
              name={name}
              label={messages.aroundYou[name]}
              defaultChecked={values[name] !== undefined}
            />
          ))}
        </FieldSet>
        <ClothingChoice
          legend={inAddition(messages.clothing)}
          options={ENSEMBLES.map(({ id, label }) => ({ id, label: messages.ensembles[id] ?? label }))}
          notSaid={messages.notSaid}
          chosen={values.clothing}
          error={errors.clothing}
        />
        <SelectField
          name="activity"
          label={inAddition(messages.activity)}
          prompt={messages.notSaid}
          options={ACTIVITIES.map(({ id, label }) => ({ value: id, label: messages.activities[id] ?? label }))}
          defaultValue={values.activity ?? ""}
          error={errors.activity}
        />
        <TextAreaField
          name="note"
          label={inAddition(messages.note)}
          rows={3}
          maxLength={500}
          defaultValue={values.note ?? ""}
          hint={messages.noteHint}
          error={errors.note}
        />
        <Field
          name="replyAddress"
          type="email"
          inputMode="email"
          autoComplete="email"
          label={inAddition(messages.reply)}
          hint={messages.replyHint}
          defaultValue={values.replyAddress ?? ""}
          error={errors.replyAddress}
        />
      </Disclosure>
      <div className={styles.send}>
        <SubmitButton pendingLabel={messages.sending}>{messages.send}</SubmitButton>
      </div>
    </FormStack>
  );
}
