import type { ReactNode } from "react";
import styles from "./disclosure.module.css";

type Props = { summary: ReactNode; open?: boolean; children: ReactNode };

/** Something that can wait: opens in place, works without script, prints open. */
export function Disclosure({ summary, open, children }: Props) {
  return (
    <details className={styles.details} open={open}>
      <summary>{summary}</summary>
      <div className={styles.content}>{children}</div>
    </details>
  );
}
