import type { ComponentProps } from "react";
import styles from "./field.module.css";
import { describedBy, type FieldProps } from "./field-frame";

type Props = FieldProps & { type?: "checkbox" | "radio" } & Omit<ComponentProps<"input">, "name" | "id" | "type">;

/** A check box or radio button with its label after it; a group of them stands in a FieldSet. */
function ChoiceField({ name, label, hint, error, id = name, type = "checkbox", ...input }: Props) {
  return (
    <div className={`${styles.field} ${error ? styles.wrong : ""}`}>
      <label className={styles.choice} htmlFor={id}>
        <input
          {...input}
          type={type}
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

export function CheckboxField(props: Omit<Props, "type">) {
  return <ChoiceField {...props} type="checkbox" />;
}

/** One of several; give each its own `id` and `value` and the group a FieldSet. */
export function RadioField(props: Omit<Props, "type"> & { id: string; value: string }) {
  return <ChoiceField {...props} type="radio" />;
}
