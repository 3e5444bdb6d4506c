import type { ReactNode } from "react";
import styles from "./tag.module.css";

type Props = {
  /** `strong`: a fact to act on; `danger`: out of use. */
  kind?: "plain" | "strong" | "danger";
  children: ReactNode;
};

/** A short word of status beside a name. */
export function Tag({ kind = "plain", children }: Props) {
  return <span className={`${styles.tag} ${styles[kind]}`}>{children}</span>;
}
