import type { ComponentProps } from "react";
import styles from "./field.module.css";
import { describedBy, FieldFrame, type FieldProps } from "./field-frame";

type Props = FieldProps & Omit<ComponentProps<"textarea">, "name" | "id">;

export function TextAreaField({ name, label, hint, error, optional, id = name, rows = 3, ...area }: Props) {
  const frame = { name, label, hint, error, optional, id };
  return (
    <FieldFrame {...frame}>
      <textarea
        {...area}
        id={id}
        name={name}
        rows={rows}
        className={`${styles.control} ${styles.area}`}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(frame)}
      />
    </FieldFrame>
  );
}
