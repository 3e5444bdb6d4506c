"use client";

import { useActionState } from "react";
import { DataTable } from "@/app/_components/ui/data-table";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { FormState } from "@/app/_server/form-state";
import type { MappingTask } from "@/lib/services/trend-imports/mapping";
import { KIND_LABEL, type MappingRow, SKIP } from "../view-model";
import styles from "./mapping-form.module.css";

type Props = {
  action: (state: FormState, form: FormData) => Promise<FormState>;
  lines: readonly MappingRow[];
  asks: MappingTask["fileAsks"];
  zones: readonly { id: number; label: string }[];
};

const WHAT = [
  ...Object.entries(KIND_LABEL).map(([value, label]) => ({ value, label })),
  { value: SKIP, label: "leave it out" },
];
const UNIT_WORDS: Record<string, string> = { degF: "°F", degC: "°C", other: "another unit" };

/** Every point of the waiting files in a line: what it is, where it belongs, what it holds. */
export function MappingForm({ action, lines, asks, zones }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const shownOf = (name: string, proposed: string) => failure?.values[name] ?? proposed;
  const errorOf = (name: string) => failure?.fieldErrors[name];
  const select = (name: string, value: string, label: string) => ({
    name,
    id: name,
    className: styles.select,
    defaultValue: shownOf(name, value),
    "aria-label": label,
  });
  // A refused form is reset to what it began with; only a new select begins with what was chosen.
  const keyOf = (name: string, value: string) => `${name}=${shownOf(name, value)}`;
  return (
    <FormStack action={formAction} className={styles.wide}>
      <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      {asks.length > 0 ? (
        <FieldSet legend="Questions about the files">
          {asks.map(({ runId, fileName, ask }) => (
            <SelectField
              key={`${runId}-${ask.what}`}
              name={`answer.${runId}.${ask.what}`}
              label={`${fileName}: ${ask.question}`}
              prompt="Choose"
              defaultValue={shownOf(`answer.${runId}.${ask.what}`, ask.proposal ?? "")}
              error={errorOf(`answer.${runId}.${ask.what}`)}
              options={ask.choices.map((choice) => ({ value: choice, label: choice }))}
            />
          ))}
        </FieldSet>
      ) : null}
      <input type="hidden" name="pointCount" value={lines.length} />
      <DataTable
        caption="Points"
        rows={lines}
        rowKey={(line) => line.name}
        columns={[
          {
            key: "name",
            head: "Point",
            names: true,
            cell: (line) => (
              <>
                {line.name}
                <input type="hidden" name={`name.${line.index}`} value={line.name} />
                {errorOf(`what.${line.index}`) ? <p className={styles.error}>{errorOf(`what.${line.index}`)}</p> : null}
              </>
            ),
          },
          {
            key: "what",
            head: "Is",
            cell: (line) => (
              <select
                key={keyOf(`what.${line.index}`, line.what)}
                {...select(`what.${line.index}`, line.what, `What ${line.name} is`)}
              >
                <option value="">choose</option>
                {WHAT.map((each) => (
                  <option key={each.value} value={each.value}>
                    {each.label}
                  </option>
                ))}
              </select>
            ),
          },
          {
            key: "zone",
            head: "Zone",
            cell: (line) => (
              <select
                key={keyOf(`zone.${line.index}`, line.zoneId)}
                {...select(`zone.${line.index}`, line.zoneId, `Zone of ${line.name}`)}
              >
                <option value="">no zone: the whole building</option>
                {zones.map((zone) => (
                  <option key={zone.id} value={zone.id}>
                    {zone.label}
                  </option>
                ))}
              </select>
            ),
          },
          {
            key: "unit",
            head: "Unit",
            cell: (line) =>
              line.unitChoices.length === 0 ? (
                line.unit
              ) : (
                <select
                  key={keyOf(`unit.${line.index}`, line.unit)}
                  {...select(`unit.${line.index}`, line.unit, `Unit of ${line.name}`)}
                >
                  <option value="">choose</option>
                  {line.unitChoices.map((choice) => (
                    <option key={choice} value={choice}>
                      {UNIT_WORDS[choice] ?? choice}
                    </option>
                  ))}
                </select>
              ),
          },
          { key: "holds", head: "Holds", cell: (line) => line.holds },
          { key: "why", head: "Why proposed", cell: (line) => line.why },
        ]}
      />
      <FormActions>
        <SubmitButton pendingLabel="Importing">Confirm and import</SubmitButton>
      </FormActions>
    </FormStack>
  );
}
