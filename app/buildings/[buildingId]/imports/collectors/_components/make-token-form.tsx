"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { TokenState } from "../actions";
import styles from "./make-token-form.module.css";

/** Makes a token and shows it, this once. */
export function MakeTokenForm({ action }: { action: (state: TokenState, form: FormData) => Promise<TokenState> }) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? (
        <Notice kind="done" title={`Token for ${state.collector}`}>
          <code className={styles.token}>{state.token}</code>
          <p>Copy it now into the collector's settings: it is shown this once, and only its hash is kept.</p>
        </Notice>
      ) : null}
      <Field
        name="collector"
        label="Name of the collector"
        hint="The program or the nightly export that will use the token. It stands beside everything that it brings."
        autoComplete="off"
        defaultValue={failure?.values.collector ?? ""}
        error={failure?.fieldErrors.collector}
      />
      <FormActions>
        <SubmitButton pendingLabel="Making the token">Make a token</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
