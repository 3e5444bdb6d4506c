"use client";

import { useActionState, useRef, useState } from "react";
import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import { type FormState, postedValues } from "@/app/_server/form-state";
import type { SheetInput } from "@/lib/electrical/device-sheet";
import type { Places } from "@/lib/services/zones/places";
import { settingCount } from "../form";
import { SettingEntry } from "./setting-entry";
import { SheetResult } from "./sheet-result";

type Props = {
  action: (state: FormState, form: FormData) => Promise<FormState>;
  values: Record<string, string>;
  places: Places;
  price: SheetInput["price"];
  buildingPath: string;
  submitLabel: string;
};

/**
 * A device and its measurement sheet. Every field is a plain form control, so the sheet works without script; with
 * it the figures follow what is typed.
 */
export function DeviceForm({ action, values: saved, places, price, buildingPath, submitLabel }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? saved;
  const errors = failure?.fieldErrors ?? {};
  const [typed, setTyped] = useState(values);
  const form = useRef<HTMLFormElement>(null);
  const follow = () => form.current && setTyped(postedValues(new FormData(form.current)));
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  return (
    <FormStack action={formAction} ref={form} onInput={follow} onChange={follow}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok ? <Notice kind="done" title="Saved" /> : null}
      <input type="hidden" name="kind" value={values.kind ?? ""} />
      <input type="hidden" name="deviceClass" value={values.deviceClass ?? ""} />
      <input type="hidden" name="settingCount" value={values.settingCount ?? "0"} />
      <FieldSet legend="Where it stands" inline>
        <Field {...field("label")} label="Label" hint="The number of its sticker." autoComplete="off" />
        <SelectField
          {...field("zoneCode")}
          label="Zone"
          prompt="Choose a zone"
          options={places.zones.map((zone) => ({ value: zone.code, label: zone.label }))}
        />
        <SelectField
          {...field("deskCode")}
          label="Desk"
          optional
          prompt="No desk"
          options={places.desks.map((desk) => ({ value: desk.code, label: `${desk.code} (zone ${desk.zoneCode})` }))}
        />
        <Field {...field("foundOn")} label="Found on" type="date" />
      </FieldSet>
      <FieldSet
        legend="Measurement sheet"
        hint="One line a setting. Choose how its power is known; leave the rest empty. Hours are those in which the setting is selected in a year, duty the share of them in which the thermostat lets it run."
      >
        {Array.from({ length: settingCount(values) }, (_, index) => (
          <SettingEntry key={values[`settings.${index}.name`] ?? index} index={index} values={values} errors={errors} />
        ))}
      </FieldSet>
      <SheetResult typed={typed} price={price} buildingPath={buildingPath} />
      <CheckboxField
        name="hasThermostat"
        label="It has a thermostat"
        defaultChecked={values.hasThermostat !== undefined}
      />
      <TextAreaField {...field("note")} label="Note" optional rows={2} />
      <FormActions>
        <SubmitButton>{submitLabel}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
