"use client";

import { useActionState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField, type SelectOption } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import type { MailServerView } from "@/lib/services/report-mail/server";

type Props = {
  action: BoundAction;
  server: MailServerView | null;
  securities: SelectOption[];
  /** Address by which the reader reached this page. */
  siteAddress: string;
};

/** Through which server mail goes, and what it may say. Works without script. */
export function MailServerForm({ action, server, securities, siteAddress }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const of = (name: string, present: string) => ({
    name,
    defaultValue: failure?.values[name] ?? present,
    error: failure?.fieldErrors[name],
  });
  const isChecked = (name: string, present: boolean): boolean =>
    failure ? failure.values[name] !== undefined : present;
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Kept. Send a test mail to see whether it works" /> : null}
      <Field {...of("host", server?.host ?? "")} label="Name of the server" hint="Such as mail.example.com." />
      <NumberField {...of("port", String(server?.port ?? 465))} label="Port" unit="" />
      <SelectField {...of("security", server?.security ?? "tls")} label="Encryption" options={securities} />
      <Field
        {...of("user", server?.user ?? "")}
        label="User name"
        optional
        hint="Empty where the server asks for no sign-in."
        autoComplete="off"
      />
      <Field
        name="password"
        type="password"
        label="Password"
        optional
        hint={
          server?.hasPassword
            ? "One is on record and shown on no page. Leave it empty to keep it."
            : "Stored unencrypted in this site's database, and shown on no page."
        }
        error={failure?.fieldErrors.password}
        autoComplete="new-password"
      />
      <Field {...of("fromAddress", server?.fromAddress ?? "")} type="email" label="Mail comes from" />
      <Field
        {...of("siteAddress", server?.siteAddress ?? siteAddress)}
        type="url"
        label="Address of this site"
        hint="Links in mail begin with it: it has to open for whoever gets the mail, occupants too."
      />
      <CheckboxField
        name="namesDesk"
        label="Mail names the desk"
        hint="With a seating plan a desk says who sits there."
        defaultChecked={isChecked("namesDesk", server?.namesDesk ?? false)}
      />
      <CheckboxField
        name="repeatsNote"
        label="Mail repeats what people wrote"
        hint="It may hold personal details, and mail is kept where no rule of this site deletes it."
        defaultChecked={isChecked("repeatsNote", server?.repeatsNote ?? false)}
      />
      <FormActions>
        <SubmitButton>Keep it</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
