"use client";

import { useActionState } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";

type ReviewProps = { action: BoundAction; canTakeOver: boolean; rawKept: boolean };

/** Ends the review: the raw readings go, and the hours go into the register where a season was worked out. */
export function ReviewForm({ action, canTakeOver, rawKept }: ReviewProps) {
  const [state, formAction] = useActionState(action, null);
  return (
    <FormStack action={formAction}>
      {state && !state.ok ? <FormMessage message={state.formError} /> : null}
      {state?.ok ? (
        <Notice kind="done" title="Reviewed">
          <p>The raw readings are deleted, the figures stay.</p>
        </Notice>
      ) : null}
      <FormActions>
        {canTakeOver ? (
          <SubmitButton name="review" value="take-over">
            {rawKept ? "Take the hours over and delete the raw readings" : "Take the hours over into the register"}
          </SubmitButton>
        ) : null}
        {rawKept ? (
          <SubmitButton kind="plain" name="review" value="only">
            Reviewed: delete the raw readings
          </SubmitButton>
        ) : null}
      </FormActions>
    </FormStack>
  );
}

/** Takes the log out of the record. */
export function RemoveForm({ action }: { action: BoundAction }) {
  const [state, formAction] = useActionState(action, null);
  return (
    <FormStack action={formAction}>
      {state && !state.ok ? <FormMessage message={state.formError} /> : null}
      <FormActions>
        <SubmitButton kind="plain" pendingLabel="Taking out">
          Take this log out of the record
        </SubmitButton>
      </FormActions>
    </FormStack>
  );
}
