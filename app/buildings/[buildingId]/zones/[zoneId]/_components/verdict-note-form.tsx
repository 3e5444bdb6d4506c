"use client";

import { useActionState } from "react";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";

type Props = { action: BoundAction; verdict: keyof typeof VERDICT_WORDS };

const STANCES = [
  { value: "confirmed", label: "I confirm it" },
  { value: "rejected", label: "I reject it" },
  { value: "noted", label: "I only note something" },
];

/** Says of the present verdict whether it holds on site. Works without script. */
export function VerdictNoteForm({ action, verdict }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string) => ({ name, defaultValue: failure?.values[name] ?? "", error: failure?.fieldErrors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Kept with your name and the date" /> : null}
      <input type="hidden" name="verdictSeen" value={verdict} />
      <FieldSet legend={`Verdict: ${VERDICT_WORDS[verdict]}`}>
        <SelectField {...of("stance")} label="What do you say of it" prompt="Choose" options={STANCES} />
        <TextAreaField
          {...of("note")}
          label="What was found"
          hint="Needed when you reject it or only note something."
          optional
        />
      </FieldSet>
      <FormActions>
        <SubmitButton>Keep it</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
