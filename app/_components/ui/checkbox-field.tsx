import type { ComponentProps } from "react";
import styles from "./field.module.css";
import { describedBy, type FieldProps } from "./field-frame";

type Props = FieldProps & Omit<ComponentProps<"input">, "name" | "id" | "type">;

/** A check box with its label after it; a group of them stands in a FieldSet. */
export function CheckboxField({ name, label, hint, error, id = name, ...input }: Props) {
  return (
    <div className={`${styles.field} ${error ? styles.wrong : ""}`}>
      <label className={styles.choice} htmlFor={id}>
        <input
          {...input}
          type="checkbox"
          id={id}
          name={name}
          aria-invalid={error ? true : undefined}
          aria-describedby={describedBy({ id, hint, error })}
        />
        <span>{label}</span>
      </label>
      {hint ? (
        <div id={`${id}-hint`} className={styles.choiceHint}>
          {hint}
        </div>
      ) : null}
      {error ? (
        <p id={`${id}-error`} className={styles.error}>
          {error}
        </p>
      ) : null}
    </div>
  );
}
