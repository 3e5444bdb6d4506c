"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { FormState } from "@/app/_server/form-state";
import { airflowUnit, type ZoneUnits } from "../form";

type Props = {
  action: (state: FormState, form: FormData) => Promise<FormState>;
  units: ZoneUnits;
  values: Record<string, string>;
  submitLabel: string;
};

export function ZoneForm({ action, units, values: saved, submitLabel }: Props) {
  const { areaUnit, temperatureUnit } = units;
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? saved;
  const of = (name: string) => ({ name, defaultValue: values[name] ?? "", error: failure?.fieldErrors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Saved" /> : null}
      <FieldSet legend="Zone" legendHidden inline>
        <Field {...of("code")} label="Code" hint="Short and unique, such as 2-14." autoComplete="off" />
        <Field {...of("name")} label="Name" optional />
        <Field {...of("floor")} label="Floor" optional />
        <Field {...of("airHandler")} label="Air handler" optional />
        <NumberField {...of("floorAreaM2")} label="Floor area" optional unit={areaUnit === "ft2" ? "ft²" : "m²"} />
        <NumberField {...of("designAirflowM3ps")} label="Design airflow" optional unit={airflowUnit(areaUnit)} />
        <NumberField
          {...of("minimumAirflowM3ps")}
          label="Minimum airflow"
          optional
          unit={airflowUnit(areaUnit)}
          hint="Left empty, it is read from the trend where that can be."
        />
        <NumberField
          {...of("targetZoneAirTempC")}
          label="Target zone air temperature"
          optional
          unit={temperatureUnit === "F" ? "°F" : "°C"}
          hint="For a zone that needs another than the building's, such as a treatment room."
        />
        <Field
          {...of("fixInProgress")}
          label="Fix in progress"
          optional
          maxLength={200}
          hint="What is being done here already. Its saving is then not promised a second time."
        />
      </FieldSet>
      <FormActions>
        <SubmitButton>{submitLabel}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
