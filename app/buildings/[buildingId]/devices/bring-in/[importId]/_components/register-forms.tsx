"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField, type SelectOption } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import { counted } from "@/lib/units/counted";

type Props = {
  action: BoundAction;
  values: Readonly<Record<string, string>>;
  headings: readonly SelectOption[];
  sheets: readonly string[];
  zones: readonly SelectOption[];
  classes: readonly SelectOption[];
};

const COLUMNS = [
  ["label", "Label or number"],
  ["deviceClass", "Sort of device"],
  ["description", "Name or description"],
  ["kind", "Heater or fan"],
  ["zoneCode", "Zone"],
  ["deskCode", "Desk"],
  ["make", "Make"],
  ["model", "Model"],
  ["nameplateW", "Nameplate power, W"],
  ["nameplateA", "Nameplate current, A"],
  ["measuredW", "Measured power, W"],
  ["hoursPerYear", "Hours a year at its highest setting"],
  ["foundOn", "Found on"],
  ["note", "Note"],
] as const;

/** Which column is what, which class each of the file's words stands for, and what holds for all rows. */
export function RegisterMappingForm({ action, values: given, headings, sheets, zones, classes }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state && !state.ok ? state : null;
  const values = failure?.values ?? given;
  const errors = failure?.fieldErrors ?? {};
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  const count = Number(values.classCount ?? "0");
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      {state?.ok ? <Notice kind="done" title="Read anew; the rows below follow it" /> : null}
      {sheets.length > 1 ? (
        <SelectField {...field("sheet")} label="Sheet" options={sheets.map((name) => ({ value: name, label: name }))} />
      ) : (
        <input type="hidden" name="sheet" value={values.sheet ?? ""} />
      )}
      <FieldSet legend="Columns" inline>
        {COLUMNS.map(([name, label]) => (
          <SelectField
            key={name}
            {...field(`column.${name}`)}
            label={label}
            optional
            prompt="no column"
            options={headings}
          />
        ))}
      </FieldSet>
      <FieldSet legend="For all rows" inline>
        <SelectField
          {...field("defaultZoneCode")}
          label="Zone where none is named"
          optional
          prompt="reject such rows"
          options={zones}
        />
        <Field {...field("labelPrefix")} label="Before a bare number" optional hint="H- makes H-7 of 7." />
      </FieldSet>
      <FieldSet legend="Sorts" hint="What the file calls it, and what it is here.">
        <input type="hidden" name="classCount" value={count} />
        {Array.from({ length: count }, (_, at) => {
          const text = values[`text.${at}`] ?? "";
          return (
            <div key={text}>
              <input type="hidden" name={`text.${at}`} value={text} />
              <SelectField
                {...field(`class.${at}`)}
                error={errors[`classes.${text}`]}
                label={text}
                prompt="not known: reject these rows"
                options={[...classes, { value: "leave-out", label: "leave these rows out" }]}
              />
            </div>
          );
        })}
      </FieldSet>
      <FormActions>
        <SubmitButton kind="plain" pendingLabel="Reading">
          Read the rows so
        </SubmitButton>
      </FormActions>
    </FormStack>
  );
}

/** Takes the rows that can be taken. */
export function TakeForm({ action, count }: { action: BoundAction; count: number }) {
  const [state, formAction] = useActionState(action, null);
  return (
    <FormStack action={formAction}>
      {state && !state.ok ? <FormMessage message={state.formError} /> : null}
      <FormActions>
        <SubmitButton pendingLabel="Registering">{`Register ${counted(count, "device")}`}</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
