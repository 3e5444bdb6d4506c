"use client";

import { useActionState } from "react";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { lineErrors } from "../form";

type Props = { action: BoundAction; values: Record<string, string> };

const FIELDS = ["energyKind", "periods", "blocks", "bills", "ratchetPct"] as const;

/** The tariff as lines that can be copied from a price sheet and a year of bills. Works without script. */
export function TariffForm({ action, values: saved }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? saved;
  const errors = Object.fromEntries(
    FIELDS.map((name) => [
      name,
      lineErrors(failure?.fieldErrors ?? {}, name === "ratchetPct" ? "ratchetFraction" : name),
    ]),
  );
  const hasErrors = Object.values(errors).some((each) => each.length > 0);
  const of = (name: (typeof FIELDS)[number]) => ({
    name,
    defaultValue: values[name] ?? "",
    error: errors[name]?.join(" ") || undefined,
  });
  return (
    <FormStack action={formAction}>
      <FormMessage message={hasErrors ? undefined : failure?.formError} fieldErrors={errors} />
      {state?.ok ? (
        <Notice kind="done" title="Saved">
          <p>The cost is worked out anew with this tariff when you open it.</p>
        </Notice>
      ) : null}
      <FieldSet legend="Energy charge">
        <SelectField
          {...of("energyKind")}
          label="A kWh costs"
          options={[
            { value: "one-price", label: "one price, that of the settings" },
            { value: "time-of-use", label: "a price by time of use" },
            { value: "blocks", label: "a price by blocks of the month's use" },
          ]}
        />
        <TextAreaField
          {...of("periods")}
          label="Periods"
          optional
          rows={4}
          hint="One a line: name; price a kWh; months; days; hours. For example: On-peak; 0.165; Jun-Sep; Mon-Fri; 12:00-18:00. The first that fits counts; all other hours have the price of the settings."
        />
        <TextAreaField
          {...of("blocks")}
          label="Blocks"
          optional
          rows={3}
          hint="One a line: up to kWh a month; price a kWh. The last begins with the word above. For example: 20000; 0.11 and then above; 0.095."
        />
      </FieldSet>
      <FieldSet legend="Demand and bills">
        <NumberField
          {...of("ratchetPct")}
          label="Ratchet"
          optional
          unit="% of the year's highest peak"
          hint="Every month is billed at least this share of it. The demand price itself stands in the settings."
        />
        <TextAreaField
          {...of("bills")}
          label="A year of bills"
          optional
          rows={12}
          hint="Twelve lines, January to December: kWh; billed peak in kW. Blocks and a ratchet need them."
        />
      </FieldSet>
      <FormActions>
        <SubmitButton>Save the tariff</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
