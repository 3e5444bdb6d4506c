import type { ComponentProps } from "react";
import { Field } from "./field";
import styles from "./field.module.css";

type Props = Omit<ComponentProps<typeof Field>, "type" | "inputMode"> & { unit: string };

/**
 * A number with its unit. A text control with a decimal keyboard: a number control drops what it cannot read,
 * and turns the wheel into an edit.
 */
export function NumberField(props: Props) {
  return <Field {...props} type="text" inputMode="decimal" autoComplete="off" className={styles.number} />;
}
