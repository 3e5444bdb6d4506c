"use client";

import { FieldSet } from "@/app/_components/ui/field-set";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { formatNumber } from "@/lib/units/format";
import { unitWord, WHAT_CHOICES } from "../kind-words";
import type { PageCount } from "./mapping-form";
import styles from "./mapping-form.module.css";
import { ALL_OF_PAGE, selectAll } from "./select-rows";

type Props = {
  count: PageCount;
  sure: number;
  lastStep: string | null;
  zones: readonly { id: number; label: string }[];
  /** Units that points of the page may have. */
  units: readonly string[];
};

/** Sets the same for the selected rows, accepts what is sure, and takes the last such step back. */
export function BulkBar({ count, sure, lastStep, zones, units }: Props) {
  if (count.all < 2) return null;
  const whole = (value: number) => formatNumber(value, { decimals: 0 });
  const places = [
    { value: "none", label: "no zone: the whole building" },
    ...zones.map((zone) => ({ value: String(zone.id), label: zone.label })),
  ];
  return (
    <FieldSet legend="Many at once" legendHidden inline id="bulk">
      <label className={styles.allShown}>
        <input type="checkbox" className={styles.box} name={ALL_OF_PAGE} onClick={selectAll} /> select all{" "}
        {whole(Math.min(count.shown, count.perPage))} of this page
      </label>
      <SelectField name="bulk.what" label="Set selected to" prompt="as it is" options={WHAT_CHOICES} />
      <SelectField name="bulk.zone" label="Zone" prompt="as it is" options={places} id="bulk.zone" />
      {units.length > 0 ? (
        <SelectField
          name="bulk.unit"
          label="Unit"
          prompt="as it is"
          options={units.map((value) => ({ value, label: unitWord(value) }))}
        />
      ) : null}
      <SubmitButton name="step" value="set" kind="plain" pendingLabel="Setting">
        Set
      </SubmitButton>
      {count.pages > 1 ? (
        <label className={styles.allShown}>
          <input type="checkbox" className={styles.box} name="allShown" /> all {whole(count.shown)} shown, on every page
        </label>
      ) : null}
      {sure > 0 ? (
        <SubmitButton name="step" value="accept" kind="plain" pendingLabel="Accepting">
          {`Accept ${whole(sure)} of high confidence`}
        </SubmitButton>
      ) : null}
      {lastStep ? (
        <SubmitButton name="step" value="undo" kind="plain" pendingLabel="Taking back">
          {`Take back: ${lastStep}`}
        </SubmitButton>
      ) : null}
    </FieldSet>
  );
}
