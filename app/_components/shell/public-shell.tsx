import type { ReactNode } from "react";
import styles from "./public-shell.module.css";

type Props = {
  /** What the reader is looking at, such as the building's name. */
  context?: string;
  /** BCP 47 tag of what stands on the page, where that is not English. */
  language?: string;
  children: ReactNode;
};

/** Page of someone who is not signed in: no navigation, one narrow column. */
export function PublicShell({ context, language, children }: Props) {
  return (
    <div className={styles.sheet}>
      <header className={styles.header}>
        <span>Setpoint Ledger</span>
        {context ? <strong>{context}</strong> : null}
      </header>
      <main id="content" lang={language} className={styles.content}>
        {children}
      </main>
    </div>
  );
}
