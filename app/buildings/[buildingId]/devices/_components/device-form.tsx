"use client";

import { useActionState, useRef, useState } from "react";
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
import { postedValues } from "@/app/_server/form-state";
import type { SheetInput } from "@/lib/electrical/device-sheet";
import type { Places } from "@/lib/services/zones/places";
import { settingCount } from "../form";
import { SHOW_FIGURES } from "../sheet-entries";
import type { SheetAction, SheetState } from "../sheet-state";
import type { SheetCircuit } from "../view-model";
import { AddSetting } from "./add-setting";
import styles from "./device-form.module.css";
import { SettingEntry } from "./setting-entry";
import { SheetResult } from "./sheet-result";

type Props = {
  action: SheetAction;
  values: Record<string, string>;
  places: Places;
  price: SheetInput["price"];
  circuit: SheetCircuit | null;
  buildingPath: string;
  submitLabel: string;
};

/**
 * A device and its measurement sheet. Every field is a plain form control, so the sheet works without script; with
 * it the figures follow what is typed.
 */
export function DeviceForm({ action, values: saved, places, price, circuit, buildingPath, submitLabel }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const shown = state?.ok === true && "values" in state ? state.values : undefined;
  const values = failure?.values ?? shown ?? saved;
  const errors = failure?.fieldErrors ?? {};
  // What was typed since the last answer; an answer brings its own values.
  const [followed, setFollowed] = useState<{ since: SheetState; typed: Record<string, string> } | null>(null);
  const typed = followed?.since === state ? followed.typed : values;
  const form = useRef<HTMLFormElement>(null);
  const follow = () => form.current && setFollowed({ since: state, typed: postedValues(new FormData(form.current)) });
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  const count = settingCount(values);
  return (
    <FormStack action={formAction} ref={form} onInput={follow} onChange={follow}>
      {/* The first button of a form is the one that Enter presses. */}
      <button type="submit" name="intent" value="save" className="visually-hidden" tabIndex={-1} aria-hidden="true">
        {submitLabel}
      </button>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {state?.ok === true && !shown ? <Notice kind="done" title="Saved" /> : null}
      <input type="hidden" name="kind" value={values.kind ?? ""} />
      <input type="hidden" name="deviceClass" value={values.deviceClass ?? ""} />
      <input type="hidden" name="settingCount" value={String(count)} />
      <input type="hidden" name="revision" value={values.revision ?? "0"} />
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
      <FieldSet legend="What is printed on it" hint="Kept apart from what was measured." inline>
        <Field {...field("make")} label="Make" optional autoComplete="off" />
        <Field {...field("model")} label="Model" optional autoComplete="off" />
        <Field {...field("dateCode")} label="Date code" optional autoComplete="off" />
        <NumberField {...field("nameplateW")} label="Rated power" optional unit="W" />
        <NumberField {...field("nameplateA")} label="Rated current" optional unit="A" />
        <NumberField {...field("nameplateVoltageV")} label="Rated voltage" optional unit="V" />
      </FieldSet>
      <FieldSet
        legend="Measurement sheet"
        hint="One line a setting. Choose how its power is known; leave the rest empty. Hours are those in which the setting is selected in a year, duty the share of them in which the thermostat lets it run."
      >
        <div key={values.revision ?? "0"}>
          {Array.from({ length: count }, (_, index) => (
            <SettingEntry
              key={values[`settings.${index}.name`] ?? index}
              index={index}
              values={values}
              errors={errors}
              removable={count > 1}
            />
          ))}
          <AddSetting values={values} />
        </div>
      </FieldSet>
      <SheetResult typed={typed} price={price} circuit={circuit} buildingPath={buildingPath} />
      <noscript>
        <button type="submit" name="intent" value={SHOW_FIGURES} className={styles.remove}>
          Work it out without saving
        </button>
      </noscript>
      <CheckboxField
        name="hasThermostat"
        label="It has a thermostat"
        defaultChecked={values.hasThermostat !== undefined}
      />
      <CheckboxField
        name="isFastened"
        label="It is fastened in place"
        defaultChecked={values.isFastened !== undefined}
      />
      <Field
        {...field("ownerContact")}
        label="Contact of its owner"
        optional
        hint="A mail address or an extension. Dropped when the device is removed."
        autoComplete="off"
      />
      <TextAreaField
        {...field("note")}
        label="Note"
        optional
        rows={2}
        hint="About the device. Nothing about the person who uses it."
      />
      <FormActions>
        <SubmitButton name="intent" value="save">
          {submitLabel}
        </SubmitButton>
      </FormActions>
    </FormStack>
  );
}
