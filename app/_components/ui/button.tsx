import Link from "next/link";
import type { ComponentProps } from "react";
import styles from "./button.module.css";

/** `primary`: the one action of a form; `plain`: everything else; `danger`: takes something out of use. */
export type ButtonKind = "primary" | "plain" | "danger";

type ButtonProps = ComponentProps<"button"> & { kind?: ButtonKind };

export function Button({ kind = "plain", type = "button", className = "", ...rest }: ButtonProps) {
  return <button type={type} className={`${styles.button} ${styles[kind]} ${className}`} {...rest} />;
}

type LinkButtonProps = ComponentProps<typeof Link> & { kind?: ButtonKind };

/** A link that leads to an action, such as a form. */
export function LinkButton({ kind = "plain", className = "", ...rest }: LinkButtonProps) {
  return <Link className={`${styles.button} ${styles[kind]} ${className}`} {...rest} />;
}
