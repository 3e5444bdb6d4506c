"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { signInAction } from "./actions";

/** E-mail address and password. Works without script; the address stays after a refusal, the password does not. */
export function SignInForm({ next }: { next: string }) {
  const [state, action] = useActionState(signInAction, null);
  const failure = state?.ok === false ? state : undefined;
  return (
    <FormStack action={action}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      <input type="hidden" name="next" value={next} />
      <Field
        name="email"
        label="E-mail address"
        type="email"
        autoComplete="username"
        spellCheck={false}
        required
        defaultValue={failure?.values.email ?? ""}
        error={failure?.fieldErrors.email}
      />
      <Field
        name="password"
        label="Password"
        type="password"
        autoComplete="current-password"
        required
        error={failure?.fieldErrors.password}
      />
      <FormActions>
        <SubmitButton pendingLabel="Signing in">Sign in</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
