import type { ReactNode } from "react";
import styles from "./field.module.css";

/** What every field has beside its control. */
export type FieldProps = {
  name: string;
  label: string;
  /** Stands under the label: where to find the value, its usual range. */
  hint?: ReactNode;
  error?: string;
  /** Adds "optional" to the label. */
  optional?: boolean;
  /** Defaults to the name. */
  id?: string;
};

/** Ids that tie a control to its hint and error. */
export function describedBy({ id, hint, error }: { id: string; hint?: ReactNode; error?: string }): string | undefined {
  const ids = [hint ? `${id}-hint` : "", error ? `${id}-error` : ""].filter(Boolean);
  return ids.length > 0 ? ids.join(" ") : undefined;
}

/** Label, hint and error around a control whose id is `id`. */
export function FieldFrame({
  id,
  label,
  hint,
  error,
  optional,
  children,
}: FieldProps & { id: string; children: ReactNode }) {
  return (
    <div className={`${styles.field} ${error ? styles.wrong : ""}`}>
      <label className={styles.label} htmlFor={id}>
        {label}
        {optional ? <span className={styles.optional}> (optional)</span> : null}
      </label>
      {hint ? (
        <div id={`${id}-hint`} className={styles.hint}>
          {hint}
        </div>
      ) : null}
      {children}
      {error ? (
        <p id={`${id}-error`} className={styles.error}>
          {error}
        </p>
      ) : null}
    </div>
  );
}
