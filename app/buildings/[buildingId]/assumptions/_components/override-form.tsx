"use client";

import { useActionState, useState } from "react";
import { DataTable } from "@/app/_components/ui/data-table";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { Sensitivity } from "@/lib/overcooling/live-effect";
import type { OverrideAction, ShownEffect } from "../override-state";
import { LiveEffectLine } from "./live-effect-line";

type Props = {
  action: OverrideAction;
  assumptionId: string;
  unit: string;
  value: { value: number; low: number; high: number };
  sensitivity: Sensitivity | null;
  sign: string;
};

const NAMES = ["value", "low", "high"] as const;

/** A building's own value with its range and the reason, and what it would make of the cost before it is saved. */
export function OverrideForm({ action, assumptionId, unit, value, sensitivity, sign }: Props) {
  const [state, formAction] = useActionState(action, null);
  const [typed, setTyped] = useState<typeof value | null>(null);
  const failure = state?.ok === false ? state : undefined;
  const shown = state?.ok === true && "effect" in state ? state : undefined;
  const entered = failure?.values ?? shown?.values;
  const field = (name: (typeof NAMES)[number]) => ({
    name,
    id: `${assumptionId}-${name}`,
    defaultValue: entered?.[name] ?? String(value[name]),
    error: failure?.fieldErrors[name],
    unit,
  });
  const errors = Object.fromEntries(
    Object.entries(failure?.fieldErrors ?? {}).map(([name, message]) => [`${assumptionId}-${name}`, message]),
  );
  const follow = (form: HTMLFormElement): void => {
    const read = new FormData(form);
    const number = (name: string): number => Number.parseFloat(String(read.get(name)).replace(",", "."));
    setTyped({ value: number("value"), low: number("low"), high: number("high") });
  };
  return (
    <FormStack action={formAction} onInput={(event) => follow(event.currentTarget)}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      <FieldSet legend="Your own value" inline>
        <NumberField {...field("value")} label="Value" />
        <NumberField {...field("low")} label="Lowest plausible" />
        <NumberField {...field("high")} label="Highest plausible" />
      </FieldSet>
      {typed && sensitivity ? <LiveEffectLine sensitivity={sensitivity} typed={typed} sign={sign} /> : null}
      {shown ? <EffectTable effect={shown.effect} sign={sign} /> : null}
      <Field
        name="reason"
        id={`${assumptionId}-reason`}
        label="Reason"
        hint="A measurement, a nameplate, a contract. Needed to save, not to see the effect."
        defaultValue={entered?.reason ?? ""}
        error={failure?.fieldErrors.reason}
      />
      <FormActions>
        <SubmitButton name="intent" value="save">
          Use this value
        </SubmitButton>
        <SubmitButton name="intent" value="preview" kind="plain" pendingLabel="Working it out">
          Show the effect first
        </SubmitButton>
      </FormActions>
    </FormStack>
  );
}

function EffectTable({ effect, sign }: { effect: ShownEffect; sign: string }) {
  const unit = sign.trim();
  return (
    <section aria-label="Effect on the cost" aria-live="polite">
      <p>{effect.sentence}</p>
      {effect.rows.length > 0 ? (
        <DataTable
          caption="Cost of overcooling a year, as it stands and with this value, by the same draws"
          rows={effect.rows}
          rowKey={(row) => row.key}
          columns={[
            { key: "label", head: "Figure", names: true, cell: (row) => row.label },
            { key: "before", head: "As it stands", unit, align: "number", cell: (row) => row.before },
            { key: "after", head: "With this value", unit, align: "number", cell: (row) => row.after },
            { key: "change", head: "Change", unit, align: "number", cell: (row) => row.change },
          ]}
        />
      ) : null}
    </section>
  );
}
