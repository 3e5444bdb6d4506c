import type { ReactNode } from "react";
import styles from "./field.module.css";

type Props = {
  legend: string;
  /** Keeps the legend for screen readers when a heading above says the same. */
  legendHidden?: boolean;
  hint?: ReactNode;
  error?: string;
  /** Id that an error summary can lead to. */
  id?: string;
  /** Fields side by side where there is room. */
  inline?: boolean;
  children: ReactNode;
};

/** Fields that belong together under one heading. */
export function FieldSet({ legend, legendHidden = false, hint, error, id, inline = false, children }: Props) {
  return (
    <fieldset id={id} className={styles.set} tabIndex={id ? -1 : undefined}>
      <legend className={legendHidden ? "visually-hidden" : styles.legend}>{legend}</legend>
      {hint ? <div className={styles.hint}>{hint}</div> : null}
      {error ? <p className={styles.error}>{error}</p> : null}
      <div className={inline ? styles.inline : styles.stack}>{children}</div>
    </fieldset>
  );
}
