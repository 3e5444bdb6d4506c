"use client";

import { useActionState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import { RULE_SETS, ruleSetLabel } from "@/lib/electrical/circuit/rule-sets";

type Props = { action: BoundAction; values: Record<string, string>; submitLabel: string };

const RULES = Object.values(RULE_SETS).map((rules) => ({ value: rules.id, label: ruleSetLabel(rules) }));
const WIRINGS = [
  { value: "radial", label: "radial" },
  { value: "ring", label: "ring" },
];
const NEUTRAL = [
  { value: "", label: "not known" },
  { value: "no", label: "no" },
  { value: "yes", label: "yes" },
];

/** What is read off the panel's door and told of the rest of the circuit. Nothing of it needs an open panel. */
export function CircuitForm({ action, values: saved, submitLabel }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? saved;
  const errors = failure?.fieldErrors ?? {};
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      {state?.ok ? <Notice kind="done" title="Saved" /> : null}
      <FieldSet legend="Breaker" hint="As read off the panel's door. Nobody opens a panel for this." inline>
        <Field {...field("panel")} label="Panel" autoComplete="off" />
        <Field {...field("circuit")} label="Circuit" autoComplete="off" />
        <Field {...field("leg")} label="Leg" optional autoComplete="off" />
        <NumberField {...field("breakerRatingA")} label="Breaker rating" optional unit="A" />
        <NumberField {...field("voltageV")} label="Voltage" optional unit="V" />
        <NumberField {...field("receptacleRatingA")} label="Receptacle rating" optional unit="A" />
        <SelectField {...field("ruleSet")} label="Rules" options={RULES} />
        <SelectField {...field("wiring")} label="Wiring" options={WIRINGS} />
      </FieldSet>
      <CheckboxField
        name="multiOutlet"
        label="It feeds several outlets"
        defaultChecked={values.multiOutlet !== undefined}
      />
      <CheckboxField
        name="listedFor100Percent"
        label="Breaker and enclosure are listed for 100 % of the rating"
        defaultChecked={values.listedFor100Percent !== undefined}
      />
      <FieldSet
        legend="Everything else on it"
        hint="Screens, printers, lighting: what is not on this register. Leave it empty while nobody knows; 0 says that there is nothing."
        inline
      >
        <NumberField {...field("baseContinuousA")} label="Continuous, 3 h or more" optional unit="A" />
        <NumberField {...field("baseNonContinuousA")} label="Not continuous" optional unit="A" />
        <Field {...field("baseLoadNote")} label="How that is known" optional autoComplete="off" />
        <SelectField {...field("sharedNeutral")} label="Neutral shared with another circuit" options={NEUTRAL} />
        <Field {...field("tripNote")} label="Trips that were told of" optional autoComplete="off" />
      </FieldSet>
      <TextAreaField {...field("note")} label="Note" optional rows={2} />
      <FormActions>
        <SubmitButton>{submitLabel}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
