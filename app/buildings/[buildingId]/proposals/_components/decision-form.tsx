"use client";

import { useActionState } from "react";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { NEXT_STATUSES, type ProposalStatus } from "@/lib/proposals/proposal-status";

type Props = { action: BoundAction; status: ProposalStatus };

const STEP_WORDS: Record<ProposalStatus, string> = {
  draft: "Draft",
  submitted: "Submit: freezes the figures",
  approved: "Approve",
  declined: "Decline",
  "sent-back": "Send back",
  "in-force": "Put in force",
  held: "Hold",
  adopted: "Adopt for good",
  "rolled-back": "Roll back",
};

/** What becomes of the proposal next, with the reason. Works without script. */
export function DecisionForm({ action, status }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const next = NEXT_STATUSES[status];
  const of = (name: string) => ({ name, defaultValue: failure?.values[name] ?? "", error: failure?.fieldErrors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <FieldSet legend="Next step">
        <SelectField
          {...of("status")}
          label="Decision"
          prompt="Choose"
          options={next.map((each) => ({ value: each, label: STEP_WORDS[each] }))}
        />
        <TextAreaField {...of("comment")} label="Comment" optional rows={2} />
      </FieldSet>
      <FormActions>
        <SubmitButton>Enter the decision</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
