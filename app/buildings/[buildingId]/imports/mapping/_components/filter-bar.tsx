"use client";

import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { formatNumber } from "@/lib/units/format";
import type { MappingFilter } from "../filter";
import { WHAT_CHOICES } from "../kind-words";
import type { PageCount } from "./mapping-form";
import styles from "./mapping-form.module.css";

const SHOWS = [
  { value: "all", label: "all points" },
  { value: "open", label: "only open ones" },
  { value: "settled", label: "only settled ones" },
];
const KINDS = [{ value: "none", label: "nothing yet" }, ...WHAT_CHOICES];

/** Which rows are shown. It stands first, so that Enter in its text asks for them. */
export function FilterBar({ filter: { text, show, what }, count }: { filter: MappingFilter; count: PageCount }) {
  const whole = (value: number) => formatNumber(value, { decimals: 0 });
  if (count.all < 2) return null;
  return (
    <FieldSet legend="Show" legendHidden inline>
      <Field name="q" label="Name contains" defaultValue={text} key={`q=${text}`} />
      <SelectField name="show" label="Show" defaultValue={show} options={SHOWS} />
      <SelectField name="what" label="That are" prompt="of any kind" defaultValue={what} options={KINDS} />
      <SubmitButton name="step" value="show" kind="plain" pendingLabel="Looking">
        Show
      </SubmitButton>
      <p className={styles.count} role="status">
        {count.shown === count.all
          ? `${whole(count.all)} ${count.all === 1 ? "point" : "points"}`
          : `${whole(count.shown)} of ${whole(count.all)} points`}
      </p>
      <input type="hidden" name="shown.q" value={text} />
      <input type="hidden" name="shown.show" value={show} />
      <input type="hidden" name="shown.what" value={what} />
    </FieldSet>
  );
}
