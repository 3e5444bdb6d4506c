import type { ReactNode } from "react";
import styles from "./notice.module.css";

type Props = {
  /** `danger` is for what must be taken out of use; nothing else is red. */
  kind?: "note" | "done" | "caution" | "danger";
  title?: string;
  /** Undo or the next step. */
  action?: ReactNode;
  children?: ReactNode;
};

const WORD = { note: "Note", done: "Done", caution: "Caution", danger: "Danger" } as const;

/** A message about the page as a whole. Its kind is a word, not only a colour. */
export function Notice({ kind = "note", title, action, children }: Props) {
  return (
    <div className={`${styles.notice} ${styles[kind]}`} role={kind === "danger" ? "alert" : "status"}>
      <strong className={styles.word}>{WORD[kind]}</strong>
      <div className={styles.text}>
        {title ? <p className={styles.title}>{title}</p> : null}
        {children}
        {action ? <div className={styles.action}>{action}</div> : null}
      </div>
    </div>
  );
}
