import type { ReactNode } from "react";
import styles from "./public-shell.module.css";

type Props = {
  /** What the reader is looking at, such as the building's name. */
  context?: string;
  children: ReactNode;
};

/** Page of someone who is not signed in: no navigation, one narrow column. */
export function PublicShell({ context, children }: Props) {
  return (
    <div className={styles.sheet}>
      <header className={styles.header}>
        <span>Setpoint Ledger</span>
        {context ? <strong>{context}</strong> : null}
      </header>
      <main id="content" className={styles.content}>
        {children}
      </main>
    </div>
  );
}
