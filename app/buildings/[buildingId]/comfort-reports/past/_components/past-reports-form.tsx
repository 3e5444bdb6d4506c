"use client";

import { useActionState } from "react";
import { Field } from "@/app/_components/ui/field";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { PastAction } from "../past-state";
import { ColumnChoices } from "./column-choices";
import { RowFates } from "./row-fates";

type Props = { action: PastAction; coldWords: string; hotWords: string };

/** The table, its columns, the words, and the fate of each row. Works without script: all of it travels with the form. */
export function PastReportsForm({ action, coldWords, hotWords }: Props) {
  const [state, formAction] = useActionState(action, null);
  const read = state?.read ?? null;
  const values = state?.values ?? {};
  const ready = read?.status === "ok" ? read.rows.filter(({ fate }) => fate === "accepted" || fate === "repaired") : [];
  const refusal = state?.formError || (read?.status === "refused" ? read.message : "");
  return (
    <FormStack action={formAction}>
      <FormMessage message={refusal || undefined} />
      {state?.taken ? <Notice kind="done" title={`${ready.length} reports taken in`} /> : null}
      <Field name="file" type="file" accept=".csv,text/csv,text/plain" label="CSV file" optional />
      <TextAreaField
        key={state?.table.length ?? 0}
        name="table"
        label="Or the table itself"
        hint="First line the headings: date, zone or desk, description; a time of day where it is known."
        rows={6}
        defaultValue={state?.table ?? ""}
      />
      {read ? <ColumnChoices read={read} values={values} /> : null}
      <TextAreaField
        name="coldWords"
        label="Words of cold complaints"
        hint="Whole words or phrases, split by commas; the longest is looked for first."
        rows={3}
        defaultValue={values.coldWords ?? coldWords}
      />
      <TextAreaField
        name="hotWords"
        label="Words of hot complaints"
        rows={3}
        defaultValue={values.hotWords ?? hotWords}
      />
      {read?.status === "ok" ? <RowFates rows={read.rows} values={values} /> : null}
      <FormActions>
        <SubmitButton
          name="step"
          value="read"
          kind={ready.length > 0 && !state?.taken ? "plain" : "primary"}
          pendingLabel="Reading"
        >
          Read the table
        </SubmitButton>
        {ready.length > 0 && !state?.taken ? (
          <SubmitButton name="step" value="take" pendingLabel="Taking in">
            {`Take in ${ready.length} reports`}
          </SubmitButton>
        ) : null}
      </FormActions>
    </FormStack>
  );
}
