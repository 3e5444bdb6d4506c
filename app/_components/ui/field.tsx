import type { ComponentProps } from "react";
import styles from "./field.module.css";
import { describedBy, FieldFrame, type FieldProps } from "./field-frame";

type Props = FieldProps & { unit?: string } & Omit<ComponentProps<"input">, "name" | "id">;

/** A one-line text field. `unit` stands after the control and is read with it. */
export function Field({ name, label, hint, error, optional, id = name, unit, className = "", ...input }: Props) {
  const frame = { name, label, hint, error, optional, id };
  const described = describedBy(frame);
  return (
    <FieldFrame {...frame}>
      <span className={styles.line}>
        <input
          {...input}
          id={id}
          name={name}
          className={`${styles.control} ${className}`}
          aria-invalid={error ? true : undefined}
          aria-describedby={unit ? [described, `${id}-unit`].filter(Boolean).join(" ") : described}
        />
        {unit ? (
          <span id={`${id}-unit`} className={styles.unit}>
            {unit}
          </span>
        ) : null}
      </span>
    </FieldFrame>
  );
}
