"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { BoundAction } from "@/app/_server/form-state";
import type { ChecklistItem } from "@/lib/electrical/inspection/checklists";
import { ITEM_OUTCOMES, outcomeLabel, SEVERITIES, severityLabel } from "@/lib/electrical/inspection/inspection-words";
import { itemField } from "../inspection-entries";
import styles from "./checklist-form.module.css";

type Props = {
  action: BoundAction;
  checklist: string;
  items: readonly Omit<ChecklistItem, "elsewhere">[];
  values: Record<string, string>;
};

/** Every item names what would be wrong; four answers, a note and a day. Plain controls, so it works without script. */
export function ChecklistForm({ action, checklist, items, values: start }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const values = failure?.values ?? start;
  const errors = failure?.fieldErrors ?? {};
  const field = (name: string) => ({ name, defaultValue: values[name] ?? "", error: errors[name] });
  return (
    <FormStack action={formAction}>
      <FormMessage message={failure?.formError} fieldErrors={errors} />
      <input type="hidden" name="checklist" value={checklist} />
      <FieldSet legend="Inspection" legendHidden inline>
        <Field {...field("inspectedOn")} label="Inspected on" type="date" />
        <Field {...field("nextDueOn")} label="Next one due" optional type="date" />
      </FieldSet>
      {SEVERITIES.map((severity) => {
        const asked = items.filter((item) => item.severity === severity);
        return asked.length === 0 ? null : (
          <section key={severity} className={styles.group} aria-label={severityLabel(severity)}>
            <h3 className={severity === "take-out-of-use" ? styles.danger : undefined}>
              {`If found so: ${severityLabel(severity)}`}
            </h3>
            {asked.map((item) => (
              <ItemEntry key={item.id} item={item} values={values} errors={errors} />
            ))}
          </section>
        );
      })}
      <TextAreaField
        {...field("note")}
        label="Note"
        optional
        rows={2}
        hint="About the device. Nothing about the person who uses it."
      />
      <FormActions>
        <SubmitButton>Keep the inspection</SubmitButton>
      </FormActions>
    </FormStack>
  );
}

type ItemProps = {
  item: Omit<ChecklistItem, "elsewhere">;
  values: Record<string, string>;
  errors: Record<string, string>;
};

function ItemEntry({ item, values, errors }: ItemProps) {
  const outcomeName = itemField(item.id, "outcome");
  const chosen = values[outcomeName] ?? "not-seen";
  const field = (name: "note" | "dueOn") => {
    const full = itemField(item.id, name);
    return { name: full, defaultValue: values[full] ?? "", error: errors[full], optional: true };
  };
  return (
    <fieldset className={styles.item}>
      <legend>{item.fault}</legend>
      <div className={styles.outcomes} key={chosen}>
        {ITEM_OUTCOMES.map((outcome) => (
          <label key={outcome} className={styles.outcome}>
            <input type="radio" name={outcomeName} value={outcome} defaultChecked={outcome === chosen} />
            {outcomeLabel(outcome)}
          </label>
        ))}
      </div>
      <div className={styles.found}>
        <Field {...field("note")} label="What was found" autoComplete="off" />
        <Field {...field("dueOn")} label="Due" type="date" />
      </div>
      <details className={styles.basis}>
        <summary>Where this stands</summary>
        <p>{item.basis}</p>
      </details>
    </fieldset>
  );
}
