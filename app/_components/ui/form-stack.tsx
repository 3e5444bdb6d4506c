import type { ComponentProps, ReactNode } from "react";
import styles from "./form.module.css";

/** A form with the ledger's spacing between its fields. */
export function FormStack({ className = "", ...form }: ComponentProps<"form">) {
  return <form className={`${styles.form} ${className}`} noValidate {...form} />;
}

/** The buttons at the end of a form, the main one first. */
export function FormActions({ children }: { children: ReactNode }) {
  return <div className={styles.actions}>{children}</div>;
}
