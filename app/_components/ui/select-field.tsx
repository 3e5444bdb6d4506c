import type { ComponentProps } from "react";
import styles from "./field.module.css";
import { describedBy, FieldFrame, type FieldProps } from "./field-frame";

export type SelectOption = { value: string; label: string };

type Props = FieldProps & {
  options: readonly SelectOption[];
  /** First entry without a value, such as "Choose a zone". */
  prompt?: string;
} & Omit<ComponentProps<"select">, "name" | "id" | "children">;

export function SelectField({ name, label, hint, error, optional, id = name, options, prompt, ...select }: Props) {
  const frame = { name, label, hint, error, optional, id };
  return (
    <FieldFrame {...frame}>
      <select
        // A refused form is reset to what it began with; only a new select begins with what was chosen.
        key={String(select.defaultValue)}
        {...select}
        id={id}
        name={name}
        className={styles.control}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(frame)}
      >
        {prompt ? <option value="">{prompt}</option> : null}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
